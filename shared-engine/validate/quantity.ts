import type { Machine } from '../machine/parts.ts'

/** What is compared: belt speed by the rpm, speed over ground, current of one motor, temperature of the motor. */
export type QuantityId = 'speed' | 'groundSpeed' | 'amps' | 'temperature'

/** One quantity over a run, as measured. SI: m/s, A, °C. */
export interface MeasuredSeries {
  readonly id: QuantityId
  /** Of each sample: segment from 0, s in it, what was measured, and the standard deviation that sensors leave. */
  readonly segments: readonly number[]
  readonly seconds: readonly number[]
  readonly measured: Float64Array
  readonly sigma: Float64Array
  /** m/s of the belt, by which parts of the run are told apart; null where they are not. */
  readonly speeds: Float64Array | null
  /** An error that all samples share: that of the start which a prediction goes out from. */
  readonly shared: number
}

/** Quantities that one way of predicting gives together, and what a machine would have done at their samples. */
export interface Comparison {
  readonly series: readonly MeasuredSeries[]
  /** One array for each series. */
  readonly predictedBy: (machine: Machine) => readonly Float64Array[]
}

/** Samples of a series as they are gathered. */
export class Samples {
  readonly segments: number[] = []
  readonly seconds: number[] = []
  readonly #measured: number[] = []
  readonly #sigma: number[] = []

  readonly #speeds: number[] = []

  /** @param speed m/s of the belt; NaN where it plays no part */
  add(segment: number, seconds: number, measured: number, sigma: number, speed: number): void {
    this.#speeds.push(speed)
    this.segments.push(segment)
    this.seconds.push(seconds)
    this.#measured.push(measured)
    this.#sigma.push(sigma)
  }

  as(id: QuantityId, shared = 0): MeasuredSeries {
    return {
      id,
      segments: this.segments,
      seconds: this.seconds,
      measured: Float64Array.from(this.#measured),
      sigma: Float64Array.from(this.#sigma),
      speeds: this.#speeds.some(Number.isNaN) ? null : Float64Array.from(this.#speeds),
      shared,
    }
  }
}
