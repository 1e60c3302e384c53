import { setImmediate as nextTurn } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import {
  anyJob,
  type JobKind,
  type JobPort,
  type JobSource,
  type JobTable,
} from '../../../shared-engine/jobs/job.ts'
import { lineOf, runJob, type ThreadLine } from '../../../shared-engine/jobs/run.ts'
import { searchJob } from '../../../shared-engine/jobs/search.ts'
import { serveJobs } from '../../../shared-engine/jobs/serve.ts'
import { readSpaceValue } from '../../../shared-engine/search/space-read.ts'
import { demo, planned, searched } from '../search/support.ts'

/** Counts what was done, and adds the numbers of its items; item 666 is a bug. */
interface Sum {
  readonly items: number
  readonly sum: number
}
const counted = { slices: 0, most: 0 }
const sumJob: JobKind<{ total: number }, Sum, Sum> = {
  name: 'sum',
  sizeOf: ({ total }) => total,
  startWorker: () => {
    let found = { items: 0, sum: 0 }
    return {
      work: (from, to) => {
        counted.slices += 1
        counted.most = Math.max(counted.most, to - from)
        for (let item = from; item < to; item += 1) {
          if (item === 666) throw new Error('a bug at item 666')
          found = { items: found.items + 1, sum: found.sum + item }
        }
      },
      take: () => {
        const part = found
        found = { items: 0, sum: 0 }
        return { part, transfer: [] }
      },
    }
  },
  startCollector: () => {
    let all = { items: 0, sum: 0 }
    return {
      add: (part) => (all = { items: all.items + part.items, sum: all.sum + part.sum }),
      outcome: () => all,
    }
  },
}

/** A pair of ports whose messages arrive later, copied, as between threads. */
function portPair(): [JobPort, JobPort] {
  const listeners: ((message: unknown) => void)[] = [() => {}, () => {}]
  const end = (own: number): JobPort => ({
    post: (message, transfer) => {
      const copy: unknown = structuredClone(message, { transfer: [...transfer] })
      setImmediate(() => listeners[1 - own]?.(copy))
    },
    listen: (listener) => (listeners[own] = listener),
  })
  return [end(0), end(1)]
}

/** A kind that is there, and one that is loaded. */
const known: JobTable = new Map<string, JobSource>([
  [sumJob.name, () => anyJob(sumJob)],
  [searchJob.name, () => Promise.resolve(anyJob(searchJob))],
])

/** Lines to threads of which each step of the clock is as long as it is told. */
function threads(count: number, step = 0.1, table: JobTable = known): ThreadLine[] {
  return Array.from({ length: count }, () => {
    const [near, far] = portPair()
    let now = 0
    serveJobs(far, table, { now: () => (now += step), pause: () => nextTurn() })
    return lineOf(near)
  })
}

describe('a job', () => {
  it.each([1, 2, 5])('is done whole, each item once, on %i threads', async (count) => {
    for (const total of [0, 1, 7, 600]) {
      const sum = Array.from({ length: total }, (_, item) => item).reduce((before, item) => before + item, 0)
      const job = runJob(sumJob, { total }, 1, threads(count), () => {})
      expect(await job.end).toEqual({ type: 'finished' })
      expect(job.outcome()).toEqual({ items: total, sum })
      expect(job.done()).toBe(total)
    }
  })

  it('tells each part that is in', async () => {
    const heard: number[] = []
    const job = runJob(sumJob, { total: 320 }, 1, threads(2), () => heard.push(job.done()))
    await job.end
    expect(heard).toHaveLength(32) // sixteen ranges for each of two threads
    expect(heard.at(-1)).toBe(320)
  })

  it('is cut into slices that fit the time between two looks at the messages', async () => {
    // A clock on which an item takes 1 ms at the first look: slices of 16 take 40 ms, and shrink to what 8 ms hold.
    Object.assign(counted, { slices: 0, most: 0 })
    await runJob(sumJob, { total: 600 }, 1, threads(1, 40), () => {}).end
    expect(counted.most).toBeLessThanOrEqual(16)
    const slow = counted.slices
    Object.assign(counted, { slices: 0, most: 0 })
    await runJob(sumJob, { total: 600 }, 1, threads(1, 0.01), () => {}).end
    expect(counted.slices).toBeLessThan(slow)
  })

  it('stops at once, and its threads are free for the next', async () => {
    const lines = threads(2)
    const job = runJob(sumJob, { total: 100_000_000 }, 1, lines, () => {})
    await nextTurn()
    job.stop()
    expect(await job.end).toEqual({ type: 'stopped' })
    expect(job.done()).toBeLessThan(100_000_000)
    const outcome = job.outcome()
    const next = runJob(sumJob, { total: 100 }, 2, lines, () => {})
    expect(await next.end).toEqual({ type: 'finished' })
    expect(next.outcome()).toEqual({ items: 100, sum: 4950 })
    expect(job.outcome()).toEqual(outcome) // nothing of the first came later
  })

  it('tells a bug of ours, and its threads go on', async () => {
    const lines = threads(2)
    const job = runJob(sumJob, { total: 1000 }, 1, lines, () => {})
    const end = await job.end
    expect(end.type === 'failed' && end.story).toContain('a bug at item 666')
    const next = runJob(sumJob, { total: 10 }, 2, lines, () => {})
    expect(await next.end).toEqual({ type: 'finished' })
  })

  it('stopped while its kind is loaded is never begun, and the next is', async () => {
    let arrive = () => {}
    let begun = 0
    const late: typeof sumJob = {
      ...sumJob,
      startWorker: (input) => {
        begun += 1
        return sumJob.startWorker(input)
      },
    }
    const loads = new Promise<void>((loaded) => (arrive = loaded))
    const lines = threads(1, 0.1, new Map([[sumJob.name, () => loads.then(() => anyJob(late))]]))
    const job = runJob(late, { total: 100 }, 1, lines, () => {})
    await nextTurn()
    job.stop()
    expect(await job.end).toEqual({ type: 'stopped' })
    const next = runJob(late, { total: 10 }, 2, lines, () => {})
    await nextTurn()
    arrive()
    expect(await next.end).toEqual({ type: 'finished' })
    expect(next.outcome()).toEqual({ items: 10, sum: 45 })
    expect(begun).toBe(1)
  })

  it('whose kind cannot be loaded is told', async () => {
    const table: JobTable = new Map([[sumJob.name, () => Promise.reject(new Error('the file is gone'))]])
    const end = await runJob(sumJob, { total: 5 }, 1, threads(1, 0.1, table), () => {}).end
    expect(end.type === 'failed' && end.story).toContain('the file is gone')
  })

  it('of a kind that a thread does not know is told', async () => {
    const end = await runJob({ ...sumJob, name: 'other' }, { total: 5 }, 1, threads(1), () => {}).end
    expect(end.type === 'failed' && end.story).toContain('no job "other"')
  })
})

it('a search by threads is the search in one piece', async () => {
  const space = {
    vary: {
      'stages.0.driverTeeth': { from: 12, to: 20, step: 1 },
      'track.sprocketTeeth': [8, 9, 10, 11],
      'pack.series': [6, 7, 8],
    },
    hold: { margins: { 'motor.*': 0 } },
    aim: [
      { figure: 'topSpeedMps', best: 'most' },
      { figure: 'toothForceN', best: 'least' },
    ],
  }
  const stored = demo('quick-sled-puller')
  const read = readSpaceValue({ format: 'pitchline-space', version: 1, ...space })
  if (!read.ok) throw new Error('the space does not read')
  const whole = searched(planned(stored, space))
  for (const count of [1, 3]) {
    const job = runJob(searchJob, { stored, space: read.value }, 1, threads(count), () => {})
    expect(await job.end).toEqual({ type: 'finished' })
    // As text: the outcome's measures are functions, of which each plan has its own.
    expect(JSON.stringify(job.outcome())).toBe(JSON.stringify(whole))
  }
})
