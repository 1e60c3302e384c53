import { denseWeights, errorWeights, nodes, rows } from './step-tableau.ts'

/** Writes the slopes dy/dt at a time and state into `slope`. */
export type SlopesOf = (time: number, state: Float64Array, slope: Float64Array) => void

/** Filled up with zeros to the same length; slopes behind a stage's own are kept finite, so they count as nothing. */
const flatRows = rows.map((row) => Float64Array.from({ length: 6 }, (_, at) => row[at] ?? 0))
const [e0, , e2, e3, e4, e5, e6] = errorWeights as readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
]
const flatDense = Float64Array.from(denseWeights)

/**
 * One state followed through time step by step in memory of its own: nothing is allocated after the start.
 *
 * Explicit Runge-Kutta of order 5 with an error estimate of order 4, as `followSteps` uses it; for long runs of which
 * only what a caller takes down is kept. Slopes have to be smooth inside a step; a kink costs small steps.
 *
 * *Source:* Dormand and Prince, *A family of embedded Runge-Kutta formulae*, J. Comp. Appl. Math. 6 (1980); step control
 * and extension as in Hairer, Nørsett and Wanner, *Solving Ordinary Differential Equations I*, 2nd edition, II.4 to II.6.
 */
export class Stepper {
  time = 0
  /** Steps tried, the refused ones included. */
  tried = 0
  /** State at `time`; written by `commit` and `restart` alone. */
  readonly state: Float64Array
  /** State at the end of the step on trial. */
  readonly end: Float64Array
  /** s of the step on trial. */
  step = 0
  /** s that the next step should take. */
  next = 0
  #slopes: SlopesOf
  readonly #k: readonly Float64Array[]
  readonly #dense: readonly Float64Array[]
  #denseReady = false
  readonly #relative: number
  readonly #floors: Float64Array

  /**
   * @param start state
   * @param relative largest error that a step may add, relative to the state
   * @param floors the same for states near 0, one each
   */
  constructor(start: Float64Array, slopes: SlopesOf, relative: number, floors: Float64Array) {
    this.state = Float64Array.from(start)
    this.end = Float64Array.from(start)
    this.#slopes = slopes
    this.#k = nodes.map(() => new Float64Array(start.length))
    this.#dense = [0, 1, 2].map(() => new Float64Array(start.length))
    this.#relative = relative
    this.#floors = floors
  }

  /** Begins again from the state as it is now: slopes have changed, or the state was written to. */
  restart(slopes: SlopesOf, firstStep: number): void {
    this.#slopes = slopes
    this.next = firstStep
    slopes(this.time, this.state, this.#k[0] as Float64Array)
  }

  /**
   * Tries a step of `next`, at most `longest`, again and smaller until its error is small enough; the state moves with
   * `commit` alone.
   *
   * @returns false where the step falls below what numbers resolve
   */
  advance(longest: number): boolean {
    for (;;) {
      const step = Math.min(this.next, longest)
      this.tried += 1
      this.step = step
      this.#trial(step)
      const error = this.#error(step)
      const factor = Math.min(5, Math.max(0.2, 0.9 * error ** -0.2))
      if (error <= 1) {
        // A step cut short by `longest` says nothing against a longer one.
        this.next = step < this.next ? Math.max(this.next, step * factor) : step * factor
        this.#denseReady = false
        return true
      }
      this.next = step * factor
      if (!(this.time + this.next > this.time)) return false
      if (error === Infinity) this.#forget()
    }
  }

  /** Takes back slopes that are no numbers: each stage multiplies those behind its own by 0, which must come to 0. */
  #forget(): void {
    for (let stage = 1; stage < 7; stage += 1) (this.#k[stage] as Float64Array).fill(0)
  }

  /** Moves to the end of the step on trial. */
  commit(): void {
    this.time += this.step
    this.state.set(this.end)
    ;(this.#k[0] as Float64Array).set(this.#k[6] as Float64Array)
  }

  /** Moves to a part of the step on trial, 0 to 1; `restart` has to follow. */
  commitPart(part: number): void {
    this.within(part, this.end)
    this.time += part * this.step
    this.state.set(this.end)
  }

  /** State at a part of the step on trial, from its continuous extension of order 4. */
  within(part: number, into: Float64Array): void {
    if (!this.#denseReady) this.#setDense()
    const [r3, r4, r5] = this.#dense as [Float64Array, Float64Array, Float64Array]
    const rest = 1 - part
    for (let i = 0; i < this.state.length; i += 1) {
      const start = this.state[i] as number
      const change = (this.end[i] as number) - start
      const inner = (r4[i] as number) + rest * (r5[i] as number)
      into[i] = start + part * (change + rest * ((r3[i] as number) + part * inner))
    }
  }

  #setDense(): void {
    const [r3, r4, r5] = this.#dense as [Float64Array, Float64Array, Float64Array]
    const [first, last] = [this.#k[0] as Float64Array, this.#k[6] as Float64Array]
    for (let i = 0; i < this.state.length; i += 1) {
      const change = (this.end[i] as number) - (this.state[i] as number)
      r3[i] = this.step * (first[i] as number) - change
      r4[i] = change - this.step * (last[i] as number) - (r3[i] as number)
      let sum = 0
      for (let stage = 0; stage < 7; stage += 1) {
        sum += (flatDense[stage] as number) * ((this.#k[stage] as Float64Array)[i] as number)
      }
      r5[i] = this.step * sum
    }
    this.#denseReady = true
  }

  #trial(step: number): void {
    const { state, end } = this
    const [k0, k1, k2, k3, k4, k5] = this.#k as readonly [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ]
    for (let stage = 1; stage < 7; stage += 1) {
      const row = flatRows[stage] as Float64Array
      const a0 = step * (row[0] as number)
      const a1 = step * (row[1] as number)
      const a2 = step * (row[2] as number)
      const a3 = step * (row[3] as number)
      const a4 = step * (row[4] as number)
      const a5 = step * (row[5] as number)
      for (let i = 0; i < state.length; i += 1) {
        end[i] =
          (state[i] as number) +
          a0 * (k0[i] as number) +
          a1 * (k1[i] as number) +
          a2 * (k2[i] as number) +
          a3 * (k3[i] as number) +
          a4 * (k4[i] as number) +
          a5 * (k5[i] as number)
      }
      this.#slopes(this.time + (nodes[stage] as number) * step, end, this.#k[stage] as Float64Array)
    }
  }

  /** The step's error over what is allowed, of the worst state; at most 1 for a good step. */
  #error(step: number): number {
    const { state, end } = this
    const floors = this.#floors
    const relative = this.#relative
    const [k0, , k2, k3, k4, k5, k6] = this.#k as readonly Float64Array[] as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ]
    let worst = 0
    for (let i = 0; i < state.length; i += 1) {
      const error =
        e0 * (k0[i] as number) +
        e2 * (k2[i] as number) +
        e3 * (k3[i] as number) +
        e4 * (k4[i] as number) +
        e5 * (k5[i] as number) +
        e6 * (k6[i] as number)
      const size = Math.max(Math.abs(state[i] as number), Math.abs(end[i] as number))
      const part = Math.abs(step * error) / ((floors[i] as number) + relative * size)
      if (!(part <= worst)) worst = part
    }
    return Number.isFinite(worst) ? worst : Infinity
  }
}
