import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { availableParallelism } from 'node:os'
import { memoryUsage } from 'node:process'
import { Worker } from 'node:worker_threads'
import { readStoredBuild } from '../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { planOf } from '../../shared-engine/search/space.ts'
import { readSpaceValue } from '../../shared-engine/search/space-read.ts'
import type { StoredSpace } from '../../shared-engine/search/space-schema.ts'
import { lineOf, runJob, type ThreadLine } from '../../shared-engine/jobs/run.ts'
import { searchJob, type SearchInput } from '../../shared-engine/jobs/search.ts'
import { keptAs, runsOf, told, type Runs } from './measure.ts'

// The gearing search on the threads that ship: a million candidates on two of them, its memory, how time grows with the
// number of candidates, and how soon a Stop is heard. Every limit is held and the map drawn, as in the window.

const entry = path.resolve('dist/cli/thread.cjs')
if (!existsSync(entry)) throw new Error('dist/cli/thread.cjs is missing: run `npm run build` first')
const runs = 7

function demo(name: string): StoredBuild {
  const read = readStoredBuild(readFileSync(path.join('examples', `${name}.build.json`)))
  if (!read.ok) throw new Error(`${name} cannot be read`)
  return read.value
}

const steps = (from: number, count: number) => ({ from, to: from + count - 1, step: 1 })

/** Drawers with so many pinions: 100,000 candidates for each ten. */
function spaceOf(pinions: number, aims: 1 | 2): StoredSpace {
  const shear = { figure: 'toothForceN', best: 'least' }
  const read = readSpaceValue({
    format: 'pitchline-space',
    version: 1,
    vary: {
      'stages.0.driverTeeth': steps(12, pinions),
      'stages.0.drivenTeeth': steps(40, 10),
      'stages.1.drivenTeeth': steps(60, 10),
      'track.sprocketTeeth': steps(8, 10),
      'controller.throttleCapPercent': { from: 55, to: 100, step: 5 },
    },
    hold: { margins: { '*': 0 } },
    aim: aims === 1 ? shear : [{ figure: 'topSpeedMps', best: 'most' }, shear],
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return read.value
}

interface Took {
  readonly seconds: number
  readonly candidates: number
  readonly megabytes: number
  /** s from Stop to the last thread's being free; where it was stopped. */
  readonly toFree: number
}

let run = 0

async function searched(
  input: SearchInput,
  lines: readonly ThreadLine[],
  stopAfter = Infinity,
): Promise<Took> {
  const plan = planOf(input.stored, input.space)
  if (!plan.ok) throw new Error(JSON.stringify(plan.mistakes))
  const begun = performance.now()
  let most = 0
  const job = runJob(searchJob, input, (run += 1), lines, () => (most = Math.max(most, memoryUsage().rss)))
  if (stopAfter < Infinity) setTimeout(() => job.stop(), stopAfter)
  const end = await job.end
  if (end.type === 'failed') throw new Error(end.story)
  const outcome = job.outcome()
  const ended = performance.now()
  const toFree = end.type === 'stopped' ? await untilFree(input, lines) : 0
  return { seconds: (ended - begun) / 1000, candidates: outcome.looked, megabytes: most / 1e6, toFree }
}

/** s until every thread has done one more candidate, which it does after letting go of what it did. */
async function untilFree(input: SearchInput, lines: readonly ThreadLine[]): Promise<number> {
  const begun = performance.now()
  const vary = { 'track.sprocketTeeth': [8, 9] }
  await runJob(searchJob, { ...input, space: { ...input.space, vary } }, (run += 1), lines, () => {}).end
  return (performance.now() - begun) / 1000
}

async function several(times: number, work: () => Promise<Took>): Promise<Took[]> {
  await work() // to warm up
  const took: Took[] = []
  for (let time = 0; time < times; time += 1) took.push(await work())
  return took
}

const of = (took: readonly Took[], what: keyof Took): Runs => runsOf(took.map((one) => one[what]))

async function withThreads(
  count: number,
  work: (lines: readonly ThreadLine[]) => Promise<void>,
): Promise<void> {
  const workers = Array.from({ length: count }, () => new Worker(entry))
  await work(
    workers.map((worker) =>
      lineOf({
        post: (message, transfer) => worker.postMessage(message, [...transfer]),
        listen: (listener) => void worker.on('message', listener),
      }),
    ),
  )
  await Promise.all(workers.map((worker) => worker.terminate()))
}

console.log(`Gearing search, ${availableParallelism()} cores:`)
const stoat = demo('quick-sled-puller')
await withThreads(2, async (lines) => {
  for (const aims of [1, 2] as const) {
    const took = await several(runs, () => searched({ stored: stoat, space: spaceOf(100, aims) }, lines))
    const candidates = took[0]?.candidates.toLocaleString('en') ?? ''
    const named = `${candidates} candidates, two threads, ${aims === 1 ? 'one aim' : 'two aims'}`
    console.log(`  ${named}: ${keptAs(`Search of ${named}`, of(took, 'seconds'), 's')}`)
    const memory = keptAs(`Memory of a search of ${named}`, of(took, 'megabytes'), 'MB', 0)
    console.log(`    most memory of the whole process: ${memory}`)
  }
  for (const pinions of [10, 20, 50]) {
    const took = await several(runs, () => searched({ stored: stoat, space: spaceOf(pinions, 1) }, lines))
    const each = runsOf(took.map(({ seconds, candidates }) => (seconds / candidates) * 1e6))
    console.log(
      `  ${(pinions * 10_000).toLocaleString('en')} candidates: ${told(of(took, 'seconds'), 's')}, ${told(each, 'µs each')}`,
    )
  }
  const stopped = await several(runs, () => searched({ stored: stoat, space: spaceOf(100, 1) }, lines, 300))
  console.log(
    `  stopped after 0.3 s: threads free again in ${keptAs('A stopped search to free threads', of(stopped, 'toFree'), 's', 3)}`,
  )
})
await withThreads(1, async (lines) => {
  const took = await several(3, () => searched({ stored: stoat, space: spaceOf(100, 1) }, lines))
  console.log(
    `  the same million, one thread: ${keptAs('Search of 1,000,000 candidates, one thread', of(took, 'seconds'), 's')}`,
  )
})
const ibex = demo('hut-hauler')
const soil: StoredSpace = {
  ...spaceOf(10, 1),
  vary: {
    'stages.0.ratio': { from: 3, to: 12.9, step: 0.1 },
    'stages.1.driverTeeth': steps(11, 10),
    'stages.1.drivenTeeth': steps(30, 10),
    'track.sprocketTeeth': steps(6, 10),
  },
}
await withThreads(2, async (lines) => {
  const took = await several(3, () => searched({ stored: ibex, space: soil }, lines))
  const named = '100,000 candidates on soil, two threads'
  console.log(`  ${named}: ${keptAs(`Search of ${named}`, of(took, 'seconds'), 's')}`)
})
