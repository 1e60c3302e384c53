import { setImmediate as nextTurn } from 'node:timers/promises'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { remediesFor } from '../../../shared-engine/remedy/remedy.ts'
import { uncertaintyOf } from '../../../shared-engine/uncertainty/uncertainty.ts'
import { readBuildText, type Build } from '../../../shared-engine/index.ts'
import type { JobKind, JobPort } from '../../../shared-engine/jobs/job.ts'
import { remedyJob } from '../../../shared-engine/jobs/remedy.ts'
import { lineOf, runJob, type ThreadLine } from '../../../shared-engine/jobs/run.ts'
import { serveJobs } from '../../../shared-engine/jobs/serve.ts'
import { jobTable } from '../../../shared-engine/jobs/table.ts'
import { uncertaintyDrawsJob, uncertaintyToldJob } from '../../../shared-engine/jobs/uncertainty-parts.ts'

function demo(): Build {
  const file = new URL('../../../examples/quick-sled-puller.build.json', import.meta.url)
  const read = readBuildText(readFileSync(file, 'utf8'))
  if (!read.ok) throw new Error('the demo cannot be read')
  return read.value
}

/** Lines to threads that count what they are sent to open. */
function threads(count: number): { lines: ThreadLine[]; opened: number[] } {
  const opened = Array.from({ length: count }, () => 0)
  const lines = opened.map((_, at) => {
    const heard: ((message: unknown) => void)[] = [() => {}, () => {}]
    const end = (own: number): JobPort => ({
      post: (message, transfer) => {
        if (own === 0 && message.type === 'open') opened[at] = (opened[at] ?? 0) + 1
        const copy: unknown = structuredClone(message, { transfer: [...transfer] })
        setImmediate(() => heard[1 - own]?.(copy))
      },
      listen: (listener) => (heard[own] = listener),
    })
    let now = 0
    serveJobs(end(1), jobTable, { now: () => (now += 0.5), pause: () => nextTurn() })
    return lineOf(end(0))
  })
  return { lines, opened }
}

async function done<Input, Part, Outcome>(
  kind: JobKind<Input, Part, Outcome>,
  input: Input,
  lines: readonly ThreadLine[],
): Promise<Outcome> {
  const job = runJob(kind, input, 1, lines, () => {})
  expect(await job.end).toEqual({ type: 'finished' })
  return job.outcome()
}

describe('uncertainty in two jobs', () => {
  const input = { build: demo(), samples: 300, seed: 7 }

  it.each([1, 3])('says what it says in one, on %i threads', async (count) => {
    const pieces = await done(uncertaintyDrawsJob, input, threads(count).lines)
    const told = await done(uncertaintyToldJob, { ...input, pieces }, threads(count).lines)
    expect(told).toEqual(uncertaintyOf(input.build, { samples: 300, seed: 7 }))
  })

  it('tells as far as the draws go', async () => {
    const pieces = await done(uncertaintyDrawsJob, input, threads(2).lines)
    const some = pieces.filter(({ piece }) => piece.to <= 150)
    expect(some.length).toBeGreaterThan(0)
    expect(some.length).toBeLessThan(pieces.length)
    const told = await done(uncertaintyToldJob, { ...input, pieces: some }, threads(1).lines)
    const chances = told?.limits.map(({ probabilityOver }) => probabilityOver) ?? []
    expect(chances.length).toBeGreaterThan(10)
    for (const chance of chances) {
      expect(chance).toBeGreaterThanOrEqual(0)
      expect(chance).toBeLessThanOrEqual(1)
    }
  })
})

describe('what would hold, as a job', () => {
  it('is what the engine says, and goes to one thread alone', async () => {
    const { lines, opened } = threads(3)
    const found = await done(remedyJob, { build: demo(), limit: null }, lines)
    expect(found).toEqual(remediesFor(demo()))
    expect(opened).toEqual([1, 0, 0])
  })
})
