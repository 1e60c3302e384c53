import type { JobKind, JobPort } from '../../shared-engine/jobs/job.ts'
import {
  lineOf,
  runJob,
  type JobEnd,
  type RunningJob,
  type ThreadLine,
} from '../../shared-engine/jobs/run.ts'
import { workFor } from './work.ts'

/**
 * Long work for a view: the engine's jobs on threads beside the window's own.
 *
 * ```ts
 * import { searchJob } from '../../shared-engine/jobs/search.ts'
 * import { threads } from './client.ts'
 *
 * const plan = planOf(stored, space)              // mistakes are shown now; a job is begun on a sound space only
 * const running = threads.start('search', searchJob, { stored, space }, {
 *   progress: ({ done, total, secondsLeft, outcome }) => …,   // about 5 times a second: rows, map and front so far
 *   ended: ({ end, outcome }) => …,                           // once: finished, stopped or failed, with what there is
 * })
 * running.stop()                                  // at once; `ended` is heard before it returns
 * ```
 *
 * - `stored` and `space` are plain data (`$state.snapshot` of what is held in runes), since they cross threads.
 * - The first word names a lane: starting again in the same lane drops what runs there, and nothing more is heard of
 *   it. Leave a view: `running.drop()`.
 * - Rows come whole (`SearchRow`: choices, figures, ledger); `withChoices(stored, row.choices)` is the build to take.
 *   Marks of the map are lists by cell (`outcome.map`); a mark's row is made by `new RowMaker(plan).rowOf(index)`.
 * - Sentences about the outcome, an impossible space included: `verdictOf(outcome, system)`.
 * - A kind that is done `alone` has a thread of its lane's own, which is ended with it when it is stopped or dropped: it
 *   cannot be let go of in the middle. The next one gets a fresh thread.
 * - Where no thread can be had, the same work is done in the window's own, in slices of a few milliseconds.
 */
export class Threads {
  #lines: ThreadLine[] | null = null
  #runs = 0
  /** A thread never came up: everything is done in the window's own. */
  #without = false
  readonly #lanes = new Map<string, Started>()
  readonly #alone = new Map<string, { readonly worker: Worker; readonly line: ThreadLine }>()
  readonly #makeThread: (() => Worker) | null
  readonly #most: number

  /**
   * @param makeThread null: everything in the window's own thread
   * @param most threads
   */
  constructor(makeThread: (() => Worker) | null, most: number) {
    this.#makeThread = makeThread
    this.#most = Math.max(1, most)
  }

  /** Starts a job in a lane and drops the one that runs there. */
  start<Input, Part, Outcome>(
    lane: string,
    kind: JobKind<Input, Part, Outcome>,
    input: Input,
    watch: JobWatch<Outcome>,
  ): JobHandle {
    this.#lanes.get(lane)?.drop()
    const job = new StartedJob(kind, input, watch, (whole) => {
      if (this.#lanes.get(lane) === job) this.#lanes.delete(lane)
      if (!whole && kind.alone === true) this.#endAlone(lane)
    })
    this.#lanes.set(lane, job)
    job.begin(kind.alone === true ? this.#aloneReady(lane) : this.#linesReady(), (this.#runs += 1))
    return job
  }

  #aloneReady(lane: string): readonly ThreadLine[] {
    const ready = this.#alone.get(lane)
    if (ready !== undefined) return [ready.line]
    if (this.#makeThread === null || this.#without) return this.#linesReady()
    try {
      const worker = this.#makeThread()
      const line = lineOf(this.#portOf(worker))
      this.#alone.set(lane, { worker, line })
      return [line]
    } catch {
      return this.#linesReady() // threads are not allowed here
    }
  }

  #endAlone(lane: string): void {
    this.#alone.get(lane)?.worker.terminate()
    this.#alone.delete(lane)
  }

  #linesReady(): readonly ThreadLine[] {
    this.#lines ??= this.#makeLines()
    return this.#lines
  }

  #makeLines(): ThreadLine[] {
    if (this.#makeThread === null) return [lineOf(ownPort())]
    try {
      return Array.from({ length: this.#most }, () => lineOf(this.#portOf(this.#makeThread?.())))
    } catch {
      return [lineOf(ownPort())] // threads are not allowed here
    }
  }

  #portOf(worker: Worker | undefined): JobPort {
    if (worker === undefined) return ownPort()
    // A thread tells its own troubles in messages: an error event means that it never came up.
    worker.onerror = () => this.#doWithout()
    return {
      post: (message, transfer) => worker.postMessage(message, [...transfer]),
      listen: (listener) => (worker.onmessage = ({ data }: MessageEvent<unknown>) => listener(data)),
    }
  }

  /** Goes on in the window's own thread: what runs begins again there. */
  #doWithout(): void {
    this.#without = true
    this.#alone.clear()
    this.#lines = [lineOf(ownPort())]
    for (const job of this.#lanes.values()) job.begin(this.#lines, (this.#runs += 1))
  }
}

/** How a job stands. */
export interface JobProgress<Outcome> {
  readonly done: number
  readonly total: number
  /** From the pace so far; null while that is a guess. */
  readonly secondsLeft: number | null
  readonly outcome: Outcome
}

/** What a view hears of a job. */
export interface JobWatch<Outcome> {
  readonly progress?: (progress: JobProgress<Outcome>) => void
  readonly ended: (ended: {
    readonly end: JobEnd
    readonly outcome: Outcome
    readonly seconds: number
  }) => void
}

/** What a view holds of a job. */
export interface JobHandle {
  /** Ends it; `ended` is heard with what was found. */
  readonly stop: () => void
  /** Ends it without another word. */
  readonly drop: () => void
}

interface Started extends JobHandle {
  readonly begin: (lines: readonly ThreadLine[], run: number) => void
}

/** ms between two looks at the outcome; making its rows costs a few. */
const pace = 200
/** Share done, or ms gone by, from which the time left is told: the first of both. */
const tellFrom = 0.02
const tellAfter = 1000

class StartedJob<Input, Part, Outcome> implements Started {
  readonly #kind: JobKind<Input, Part, Outcome>
  readonly #input: Input
  readonly #watch: JobWatch<Outcome>
  readonly #leave: (whole: boolean) => void
  #running: RunningJob<Outcome> | null = null
  #begun = 0
  #told = 0

  constructor(
    kind: JobKind<Input, Part, Outcome>,
    input: Input,
    watch: JobWatch<Outcome>,
    /** @param whole whether nothing of it runs any more */
    leave: (whole: boolean) => void,
  ) {
    this.#kind = kind
    this.#input = input
    this.#watch = watch
    this.#leave = leave
  }

  readonly begin = (lines: readonly ThreadLine[], run: number) => {
    const before = this.#running
    this.#running = null
    before?.stop()
    this.#begun = this.#told = performance.now()
    const running = runJob(this.#kind, this.#input, run, lines, () => this.#heard())
    this.#running = running
    void running.end.then((end) => {
      if (this.#running === running) this.#end(end)
    })
  }

  readonly stop = () => {
    const running = this.#running
    if (running === null) return
    this.#end({ type: 'stopped' })
    running.stop()
  }

  readonly drop = () => {
    const running = this.#running
    this.#running = null
    running?.stop()
    this.#leave(running === null)
  }

  #end(end: JobEnd): void {
    const running = this.#running
    if (running === null) return
    this.#running = null
    this.#leave(end.type !== 'stopped')
    this.#watch.ended({ end, outcome: running.outcome(), seconds: (performance.now() - this.#begun) / 1000 })
  }

  #heard(): void {
    const running = this.#running
    const now = performance.now()
    if (running === null || now - this.#told < pace) return
    this.#told = now
    const done = running.done()
    if (done >= running.total) return // the end tells it
    const share = done / running.total
    const gone = now - this.#begun
    const sure = share >= tellFrom || (share > 0 && gone >= tellAfter)
    const secondsLeft = sure ? ((gone / 1000) * (1 - share)) / share : null
    this.#watch.progress?.({ done, total: running.total, secondsLeft, outcome: running.outcome() })
  }
}

/** The window's own thread as a port: messages go round by way of the event queue, as between threads. */
function ownPort(): JobPort {
  const { port1: near, port2: far } = new MessageChannel()
  workFor(messagePort(far))
  return messagePort(near)
}

function messagePort(port: MessagePort): JobPort {
  return {
    post: (message, transfer) => port.postMessage(message, [...transfer]),
    listen: (listener) => (port.onmessage = ({ data }: MessageEvent<unknown>) => listener(data)),
  }
}

const makeThread =
  typeof Worker === 'undefined'
    ? null
    : () => new Worker(new URL('./thread.ts', import.meta.url), { type: 'module', name: 'pitchline' })
const cores = typeof navigator === 'undefined' ? 1 : (navigator.hardwareConcurrency ?? 1)

/** The window's threads, made when the first job starts and kept. */
export const threads = new Threads(makeThread, Math.min(8, cores))
