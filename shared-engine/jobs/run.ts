import { jobAnswerSchema, type JobKind, type JobPort, type JobRange } from './job.ts'

/** How a job ended. */
export type JobEnd =
  | { readonly type: 'finished' }
  | { readonly type: 'stopped' }
  /** A bug of ours, told as it was found. */
  | { readonly type: 'failed'; readonly story: string }

/** A job under way. */
export interface RunningJob<Outcome> {
  /** Items done so far. */
  readonly done: () => number
  readonly total: number
  /** The result so far. */
  readonly outcome: () => Outcome
  /** What is in as one part; null for a kind that gives none. */
  readonly gathered: () => unknown
  /** Settles when it ends, never rejects. */
  readonly end: Promise<JobEnd>
  /** Ends it now; threads let go within one slice. */
  readonly stop: () => void
}

/** A port that several jobs may use one after the other. */
export interface ThreadLine {
  readonly port: JobPort
  /** Listeners by the number of their run. */
  readonly runs: Map<number, (message: unknown) => void>
}

/** Wraps a port so that each run hears its own answers alone. */
export function lineOf(port: JobPort): ThreadLine {
  const runs = new Map<number, (message: unknown) => void>()
  port.listen((message) => {
    const { run } = message as { readonly run?: number }
    if (run !== undefined) runs.get(run)?.(message) // a run that was stopped is no longer listened to
  })
  return { port, runs }
}

const rangesPerThread = 16
/** Of work that one thread does alone: so many that the way it has come is seen, and nothing has to be dealt out evenly. */
const rangesAlone = 128
const longestRange = 32_768

/**
 * Deals a job out to threads: each gets a range, and the next one with its answer, until all are in.
 *
 * @param run a number that no other job on these lines has
 * @param threads lines to them, at least one
 * @param heard called after each part is in
 * @param only the items to do; all where left out
 */
export function runJob<Input, Part, Outcome>(
  kind: JobKind<Input, Part, Outcome>,
  input: Input,
  run: number,
  threads: readonly ThreadLine[],
  heard: () => void,
  only?: JobRange,
): RunningJob<Outcome> {
  const lines = threads.slice(0, kind.alone === true ? 1 : (kind.threadsFor?.(input) ?? threads.length))
  const { from: first, to: last } = only ?? { from: 0, to: kind.sizeOf(input) }
  const total = last - first
  const collector = kind.startCollector(input)
  const ranges = kind.alone === true ? rangesAlone : rangesPerThread * lines.length
  const length = Math.max(1, Math.min(longestRange, Math.ceil(total / ranges)))
  let next = first
  let done = 0
  let over = false
  let settle: (end: JobEnd) => void = () => {}
  const end = new Promise<JobEnd>((resolve) => (settle = resolve))

  const finish = (how: JobEnd) => {
    if (over) return
    over = true
    for (const { port, runs } of lines) {
      runs.delete(run)
      port.post({ type: 'close', run }, [])
    }
    settle(how)
  }
  const deal = (line: ThreadLine) => {
    if (next >= last) return
    const from = next
    next = Math.min(last, from + length)
    line.port.post({ type: 'range', run, from, to: next }, [])
  }
  const hear = (line: ThreadLine, message: unknown) => {
    const answer = jobAnswerSchema.parse(message)
    if (answer.type === 'failed') return finish({ type: 'failed', story: answer.story })
    deal(line)
    collector.add(answer.part as Part)
    done += answer.to - answer.from
    heard()
    if (done >= total) finish({ type: 'finished' })
  }

  for (const line of lines) {
    line.runs.set(run, (message) => hear(line, message))
    const sent = kind.sent?.(input) ?? { input, transfer: [] }
    line.port.post({ type: 'open', run, job: kind.name, input: sent.input }, sent.transfer)
  }
  // Two ranges each, so that no thread waits for its answer to be heard; dealt in turn, so that each gets some.
  for (let round = 0; round < 2; round += 1) lines.forEach(deal)
  if (total === 0) finish({ type: 'finished' })
  return {
    done: () => done,
    total,
    outcome: () => collector.outcome(),
    gathered: () => collector.gathered?.() ?? null,
    end,
    stop: () => finish({ type: 'stopped' }),
  }
}
