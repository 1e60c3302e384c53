import { describe, expect, it } from 'vitest'
import type { JobKind, JobRequest } from '../../shared-engine/jobs/job.ts'
import { Threads, type LostWork } from '../../src-renderer/workers/client.ts'
import type { Loss, Thread } from '../../src-renderer/workers/web-thread.ts'

/** A kind of job that never comes to an end by itself: its threads only take what they are sent. */
function kindOf(alone: boolean, few?: number): JobKind<number, never, string> {
  return {
    name: 'endless',
    ...(alone ? { alone: true as const } : {}),
    ...(few === undefined ? {} : { threadsFor: () => few }),
    sizeOf: (items) => items,
    startWorker: () => {
      throw new Error('the threads of this test do no work')
    },
    startCollector: () => ({ add: () => {}, outcome: () => 'so far' }),
  }
}

/** Threads that are lost when the test says so. */
function crew() {
  const made: { sent: JobRequest['type'][]; ended: boolean; lose: (how: Loss) => void }[] = []
  const make = (lost: (how: Loss) => void): Thread => {
    const one = { sent: [] as JobRequest['type'][], ended: false, lose: lost }
    made.push(one)
    const post = ({ type }: { readonly type: string }) => void one.sent.push(type as JobRequest['type'])
    return { port: { post, listen: () => {} }, end: () => (one.ended = true) }
  }
  const threads = new Threads(make, 2)
  const lost: LostWork[] = []
  threads.onLost = (what) => lost.push(what)
  return { threads, made, lost }
}

describe.each([
  ['shared by all lanes', false, 2],
  ['of a lane’s own', true, 1],
])('a thread %s that ends unasked', (_, alone, count) => {
  it('has its work begun anew on fresh threads, and said', () => {
    const { threads, made, lost } = crew()
    threads.start('lane', kindOf(alone), 100, { ended: () => expect.unreachable('it goes on') })
    expect(made).toHaveLength(count)
    made[0]?.lose('ended')
    expect(made).toHaveLength(2 * count)
    expect(made.slice(0, count).every(({ ended }) => ended)).toBe(true)
    expect(made.slice(count).every(({ sent }) => sent.includes('open') && sent.includes('range'))).toBe(true)
    expect(lost).toEqual([{ begunAgain: 1, failed: 0 }])
  })

  it('a second time fails the work, with what was found', () => {
    const { threads, made, lost } = crew()
    const heard: unknown[] = []
    threads.start('lane', kindOf(alone), 100, { ended: ({ end, outcome }) => heard.push(end.type, outcome) })
    made[0]?.lose('ended')
    made[count]?.lose('ended')
    expect(heard).toEqual(['failed', 'so far'])
    expect(lost).toEqual([
      { begunAgain: 1, failed: 0 },
      { begunAgain: 0, failed: 1 },
    ])
    // What is started next has threads again.
    threads.start('lane', kindOf(alone), 100, { ended: () => {} })
    expect(made.at(-1)?.sent).toContain('open')
  })

  it('with nothing to do is replaced when there is', () => {
    const { threads, made, lost } = crew()
    threads.start('lane', kindOf(alone), 0, { ended: () => {} }).drop()
    made[0]?.lose('ended')
    expect(lost).toEqual([{ begunAgain: 0, failed: 0 }])
    threads.start('lane', kindOf(alone), 100, { ended: () => {} })
    expect(made.at(-1)?.sent).toContain('open')
  })
})

it('no more threads are made than a job asks for, and those that are there serve the next one', () => {
  const { threads, made } = crew()
  threads.start('small', kindOf(false, 1), 100, { ended: () => {} })
  expect(made).toHaveLength(1)
  threads.start('large', kindOf(false), 100, { ended: () => {} })
  expect(made).toHaveLength(2)
  expect(made.map(({ sent }) => sent.filter((one) => one === 'open').length)).toEqual([2, 1])
})
