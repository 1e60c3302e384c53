import type { JobKind, JobPort } from '../../shared-engine/jobs/job.ts'
import { runJob, type JobEnd, type RunningJob, type ThreadLine } from '../../shared-engine/jobs/run.ts'
import { toEngine } from '../../shared-engine/units/convert.ts'
import { Crew, type MakeThread } from './crew.ts'
import { webThread, type Loss } from './web-thread.ts'
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
 * - A thread that ends by itself is noticed: what ran on it is begun anew, once; a second time it has failed. Either is
 *   said to `onLost`.
 * - Where no thread can be had, the same work is done in the window's own, in slices of a few milliseconds.
 */
export class Threads {
  /** Hears of each thread that ended unasked. */
  onLost: (what: LostWork) => void = () => {}
  #crew: Crew | null = null
  #runs = 0
  /** A thread never came up: everything is done in the window's own. */
  #without = false
  readonly #lanes = new Map<string, Started>()
  readonly #alone = new Map<string, Crew>()
  readonly #makeThread: MakeThread | null
  readonly #most: number

  /**
   * @param makeThread null: everything in the window's own thread
   * @param most threads
   */
  constructor(makeThread: MakeThread | null, most: number) {
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
    job.begin(this.#linesFor(lane, job), (this.#runs += 1))
    return job
  }

  /** Has the thread of a lane that is worked in `alone` ready before it is asked for: it takes its time to come up. */
  ready(lane: string): void {
    if (this.#makeThread === null || this.#without || this.#alone.has(lane)) return
    this.#linesFor(lane, { alone: true, threads: 1 })
  }

  #linesFor(lane: string, { alone, threads }: Pick<Started, 'alone' | 'threads'>): readonly ThreadLine[] {
    if (!alone || this.#makeThread === null || this.#without) return this.#crewReady().lines(threads)
    const ready = this.#alone.get(lane) ?? this.#crewOf(1, (how) => this.#lose(lane, how))
    this.#alone.set(lane, ready)
    return ready.lines(1)
  }

  #endAlone(lane: string): void {
    this.#alone.get(lane)?.end()
    this.#alone.delete(lane)
  }

  #crewReady(): Crew {
    this.#crew ??= this.#crewOf(this.#most, (how) => this.#lose(null, how))
    return this.#crew
  }

  #crewOf(most: number, lost: (how: Loss) => void): Crew {
    return new Crew(this.#without ? null : this.#makeThread, most, lost, ownPort)
  }

  /** @param lane whose own thread it was; null: one of those that all others share */
  #lose(lane: string | null, how: Loss): void {
    if (how === 'never-up') return this.#doWithout()
    if (lane === null) {
      this.#crew?.end()
      this.#crew = null
    } else this.#endAlone(lane)
    const hit = [...this.#lanes].filter(([name, job]) => (lane === null ? !job.alone : name === lane))
    const again = hit.filter(([, job]) => job.mayBeginAgain())
    for (const [name, job] of again) job.begin(this.#linesFor(name, job), (this.#runs += 1))
    for (const [, job] of hit) if (!again.some(([, one]) => one === job)) job.fail(lostStory)
    this.onLost({ begunAgain: again.length, failed: hit.length - again.length })
  }

  /** Goes on in the window's own thread: what runs begins again there. */
  #doWithout(): void {
    this.#without = true
    for (const lane of [...this.#alone.keys()]) this.#endAlone(lane)
    this.#crew?.end()
    this.#crew = null
    for (const job of this.#lanes.values()) job.begin(this.#crewReady().lines(1), (this.#runs += 1))
  }
}

const lostStory = 'a thread ended in the middle of its work, a second time'

/** What became of the work of a thread that ended unasked. */
export interface LostWork {
  readonly begunAgain: number
  readonly failed: number
}

/** How a job stands. */
interface JobProgress<Outcome> {
  readonly done: number
  readonly total: number
  /** From the pace so far; null while that is a guess. */
  readonly secondsLeft: number | null
  readonly outcome: Outcome
}

/** What a view hears of a job. */
interface JobWatch<Outcome> {
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
  /** On a thread of its lane's own. */
  readonly alone: boolean
  /** How many can share it. */
  readonly threads: number
  readonly begin: (lines: readonly ThreadLine[], run: number) => void
  /** Whether this is the first time that it has to be begun again. */
  readonly mayBeginAgain: () => boolean
  readonly fail: (story: string) => void
}

/** ms from the start to the first look at the outcome, and between two; making its rows costs a few. */
const firstLook = 100
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
  readonly alone: boolean
  readonly threads: number
  #begun = 0
  #told = 0
  #begunAgain = false
  /** Whether something was told before the end. */
  #news = false

  constructor(
    kind: JobKind<Input, Part, Outcome>,
    input: Input,
    watch: JobWatch<Outcome>,
    /** @param whole whether nothing of it runs any more */
    leave: (whole: boolean) => void,
  ) {
    this.#kind = kind
    this.alone = kind.alone === true
    this.threads = this.alone ? 1 : (kind.threadsFor?.(input) ?? Infinity)
    this.#input = input
    this.#watch = watch
    this.#leave = leave
  }

  readonly begin = (lines: readonly ThreadLine[], run: number) => {
    const before = this.#running
    this.#running = null
    before?.stop()
    this.#begun = performance.now()
    this.#told = this.#begun + firstLook - pace
    const running = runJob(this.#kind, this.#input, run, lines, () => this.#heard())
    this.#running = running
    void running.end.then((end) => {
      if (this.#running === running) this.#end(end)
    })
  }

  readonly mayBeginAgain = () => {
    const may = !this.#begunAgain
    this.#begunAgain = true
    return may
  }

  readonly fail = (story: string) => this.#end({ type: 'failed', story })

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
    this.#watch.ended({
      end,
      outcome: running.outcome(),
      seconds: toEngine(performance.now() - this.#begun, 'time', 'ms'),
    })
  }

  #heard(): void {
    const running = this.#running
    const now = performance.now()
    if (running === null) return
    const isNews = !this.#news && this.#kind.isTold?.(running.outcome()) === true
    this.#news ||= isNews
    if (now - this.#told < pace && !isNews) return
    this.#told = now
    const done = running.done()
    if (done >= running.total) return // the end tells it
    const share = done / running.total
    const gone = now - this.#begun
    const sure = share >= tellFrom || (share > 0 && gone >= tellAfter)
    const secondsLeft = sure ? (toEngine(gone, 'time', 'ms') * (1 - share)) / share : null
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

const makeThread: MakeThread | null =
  typeof Worker === 'undefined'
    ? null
    : (lost) =>
        webThread(
          (name) => new Worker(new URL('./thread.ts', import.meta.url), { type: 'module', name }),
          lost,
        )
const cores = typeof navigator === 'undefined' ? 1 : (navigator.hardwareConcurrency ?? 1)

/** The window's threads, made when the first job starts and kept. */
export const threads = new Threads(makeThread, Math.min(8, cores))
