import { eventsIn, pieceOf, stateAt, weighted } from './step-piece.ts'
import type { Happened, Piece, StepEvent } from './step-piece.ts'
import { errorWeights, nodes, rows } from './step-tableau.ts'

export type { Happened, StepEvent } from './step-piece.ts'

/** Writes the slopes dy/dt at a time and state into `slope`. */
export type Slopes = (time: number, state: Float64Array, slope: Float64Array) => void

/** A run of ordinary differential equations to follow. */
export interface StepProblem {
  readonly slopes: Slopes
  readonly from: number
  /** After `from`. */
  readonly to: number
  readonly start: readonly number[]
  /** Largest error a step may add, relative to the state; default 1e-9. */
  readonly relative?: number
  /** The same for states near 0; one for all or one each; default 1e-9. */
  readonly absolute?: number | readonly number[]
  readonly longestStep?: number
  readonly mostSteps?: number
  readonly events?: readonly StepEvent[]
}

/** A run followed to its end. */
export interface StepRun {
  /** `too-stiff`: the step fell below what numbers resolve, or too many steps; the run stands up to there. */
  readonly ended: 'reached' | 'event' | 'too-stiff'
  readonly times: readonly number[]
  /** State at each of `times`. */
  readonly states: readonly Float64Array[]
  readonly happened: readonly Happened[]
  /** State at any time of the run, from the continuous extension; held at the ends. */
  readonly at: (time: number) => Float64Array
}

/**
 * Follows ordinary differential equations with steps chosen by their error, and finds events on the way.
 *
 * Explicit Runge-Kutta of order 5 with an error estimate of order 4; not for stiff equations. An event that passes through
 * 0 twice between two of the five points looked at in a step is missed: bound `longestStep` where that can be.
 *
 * @param problem times in s, states in any unit; slopes have to be smooth inside a step, kinks cost small steps
 * @returns every step, the events and the state at any time between
 *
 * *Source:* Dormand and Prince, *A family of embedded Runge-Kutta formulae*, J. Comp. Appl. Math. 6 (1980); step control
 * and extension as in Hairer, Nørsett and Wanner, *Solving Ordinary Differential Equations I*, 2nd edition, II.4 to II.6.
 *
 * @example
 * const cooling = followSteps({ slopes: (_, y, dy) => { dy[0] = -(y[0] ?? 0) }, from: 0, to: 1, start: [1] })
 * cooling.at(1)[0] // 0.36787944…
 */
export function followSteps(problem: StepProblem): StepRun {
  const following = new Following(problem)
  following.until(problem.to)
  return following.run()
}

/** The same, piece by piece: where it is paused plays no part in its steps. */
export class Following {
  /** Steps tried, the refused ones included. */
  tried = 0
  readonly #problem: StepProblem
  readonly #longest: number
  readonly #run: RunUnderWay
  readonly #k: readonly Float64Array[]
  #step: number

  constructor(problem: StepProblem) {
    const { slopes, from, to, start, longestStep = Infinity } = problem
    this.#problem = problem
    this.#longest = Math.min(longestStep, to - from)
    this.#k = nodes.map(() => new Float64Array(start.length))
    this.#run = runFrom(from, start)
    this.#step = this.#longest / 100
    slopes(from, this.#run.state, slopeAt(this.#k, 0))
  }

  get time(): number {
    return this.#run.time
  }

  /** Whether it has come to its end. */
  get isOver(): boolean {
    return this.#run.ended !== 'reached' || this.#run.time >= this.#problem.to
  }

  /** Goes on until a time is passed, or to its end. */
  until(time: number): void {
    const run = this.#run
    while (run.time < time && !this.isOver) {
      if (this.tried >= (this.#problem.mostSteps ?? 100_000) || run.time + this.#step === run.time) {
        run.ended = 'too-stiff'
        return
      }
      this.tried += 1
      this.#try()
    }
  }

  #try(): void {
    const { slopes, to, relative = 1e-9, absolute = 1e-9, events = [] } = this.#problem
    const [run, k] = [this.#run, this.#k]
    const floor = (i: number) => (typeof absolute === 'number' ? absolute : (absolute[i] ?? 1e-9))
    const last = run.time + this.#step >= to
    if (last) this.#step = to - run.time
    const end = trial(slopes, run.time, this.#step, run.state, k)
    const error = errorOf(k, this.#step, run.state, end, relative, floor)
    if (error <= 1) {
      accept(
        run,
        pieceOf(run.time, this.#step, run.state, end, k),
        end,
        last ? to : run.time + this.#step,
        events,
      )
      slopeAt(k, 0).set(slopeAt(k, 6))
    }
    this.#step = Math.min(this.#longest, this.#step * Math.min(5, Math.max(0.2, 0.9 * error ** -0.2)))
  }

  /** The run as far as it went. */
  run(): StepRun {
    const { ended, times, states, happened, pieces } = this.#run
    return { ended, times, states, happened, at: (wanted) => stateAt(times, states, pieces, wanted) }
  }
}

const slopeAt = (k: readonly Float64Array[], stage: number) => k[stage] as Float64Array

/** A run under way. */
interface RunUnderWay {
  time: number
  state: Float64Array
  ended: StepRun['ended']
  readonly times: number[]
  readonly states: Float64Array[]
  readonly pieces: Piece[]
  readonly happened: Happened[]
}

function runFrom(time: number, start: readonly number[]): RunUnderWay {
  const state: Float64Array = Float64Array.from(start)
  return { time, state, ended: 'reached', times: [time], states: [state], pieces: [], happened: [] }
}

/** Takes a good step into the run, up to the first event that stops it. */
function accept(
  run: RunUnderWay,
  piece: Piece,
  end: Float64Array,
  endTime: number,
  events: readonly StepEvent[],
): void {
  const found = eventsIn(piece, events)
  const stop = found.findIndex((event) => event.stops)
  const stopped = stop < 0 ? undefined : found[stop]
  run.happened.push(...(stopped === undefined ? found : found.slice(0, stop + 1)))
  run.time = stopped?.time ?? endTime
  run.state = stopped?.state ?? end
  run.pieces.push(piece)
  run.times.push(run.time)
  run.states.push(run.state)
  if (stopped !== undefined) run.ended = 'event'
}

/** One step on trial: fills the slopes and gives the state at its end. */
function trial(
  slopes: Slopes,
  time: number,
  step: number,
  state: Float64Array,
  k: readonly Float64Array[],
): Float64Array {
  let end = state
  for (let stage = 1; stage < 7; stage++) {
    const row = rows[stage] as readonly number[]
    end = weighted(k, row).map((sum, i) => (state[i] as number) + step * sum)
    slopes(time + (nodes[stage] as number) * step, end, k[stage] as Float64Array)
  }
  return end
}

/** Root mean square of the step's error over what is allowed for each state; at most 1 for a good step. */
function errorOf(
  k: readonly Float64Array[],
  step: number,
  start: Float64Array,
  end: Float64Array,
  relative: number,
  floor: (i: number) => number,
): number {
  const errors = weighted(k, errorWeights)
  const sum = errors.reduce((total, error, i) => {
    const size = Math.max(Math.abs(start[i] as number), Math.abs(end[i] as number))
    return total + ((step * error) / (floor(i) + relative * size)) ** 2
  }, 0)
  const result = Math.sqrt(sum / errors.length)
  return Number.isFinite(result) ? result : Infinity
}
