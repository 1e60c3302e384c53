import { afterEach, expect, it, vi } from 'vitest'
import type { JobKind } from '../../shared-engine/jobs/job.ts'
import { Threads } from '../../src-renderer/workers/client.ts'
import type { Thread } from '../../src-renderer/workers/web-thread.ts'

afterEach(() => void vi.restoreAllMocks())

/** Work without an end in sight, whose threads are answered for by the test. */
const endless: JobKind<number, null, string> = {
  name: 'endless',
  sizeOf: (items) => items,
  startWorker: () => {
    throw new Error('the threads of this test do no work')
  },
  startCollector: () => ({ add: () => {}, outcome: () => 'so far' }),
}

interface Asked {
  readonly type: string
  readonly run: number
  readonly from: number
  readonly to: number
}

it('the first answers of long work are told a tenth of a second after its start, the next ones every fifth', () => {
  // RAIL (web.dev): an answer within 100 ms is taken as at once. The clock is the test's own: nothing here is timed.
  let now = 5000
  vi.spyOn(performance, 'now').mockImplementation(() => now)
  const asked: Asked[] = []
  let hear: (message: unknown) => void = () => {}
  const make = (): Thread => ({
    port: {
      post: (message) => void asked.push(message as unknown as Asked),
      listen: (listener) => (hear = listener),
    },
    end: () => {},
  })
  const told: number[] = []
  new Threads(make, 1).start('lane', endless, 1e12, {
    progress: () => void told.push(now - 5000),
    ended: () => expect.unreachable('it goes on'),
  })
  for (let step = 0; step < 80; step += 1) {
    now += 10
    const range = asked.filter(({ type }) => type === 'range').at(-1)
    if (range === undefined) throw new Error('nothing was asked of the thread')
    hear({ ...range, type: 'part', part: null })
  }
  expect(told).toEqual([100, 300, 500, 700])
})
