import type { Channel } from '../channel.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import { samplesBetween, type InPieces } from '../pieces.ts'
import { quantumOf, rankOfOwn } from '../order-statistics.ts'
import type { Currents } from './current.ts'
import { Rates } from './rates.ts'

const runningShare = 0.1
const fewestSteps = 10

/**
 * The current that tells whether the track carries, at the rpm samples, beside the levels that it is held against: the
 * motor's where that was logged, else the pack's.
 */
export class LoadSignal {
  readonly rpm: Channel
  readonly rates: Rates
  /** x, A; NaN where it is not known. */
  readonly x: Float64Array
  /** y_0, y, cruise and spin at each sample, A. */
  readonly free: Float64Array
  readonly threshold: Float64Array
  readonly cruise: Float64Array
  readonly spin: Float64Array
  /** s, A: what steps of the reading and noise make of it. */
  coarseness = NaN
  /** Step of the current's readings, A; NaN where there is none. */
  readonly quantum: number

  readonly model: LogModel
  readonly currents: Currents

  constructor(data: LogData, model: LogModel, currents: Currents, rpm: Channel) {
    this.model = model
    this.currents = currents
    this.rpm = rpm
    this.rates = new Rates(model)
    const count = rpm.samples.length
    const byMotor = currents.source === 'motorAmps'
    this.x = byMotor ? currents.motor : currents.pack
    this.free = new Float64Array(count)
    this.threshold = new Float64Array(count)
    this.cruise = new Float64Array(count)
    this.spin = new Float64Array(count)
    this.quantum = this.#quantum(data)
  }

  /** Works out what it holds; nothing of it stands before. */
  *work(): InPieces<void> {
    const { currents } = this
    const count = this.rpm.samples.length
    const byMotor = currents.source === 'motorAmps'
    this.coarseness = Math.max(Number.isNaN(this.quantum) ? 0 : this.quantum, this.#noise())
    yield
    for (let place = 0; place < count; place += 1) {
      const turning = this.rpmAt(place)
      const found = byMotor
        ? this.rates.levels(turning)
        : this.rates.packLevels(turning, currents.volts[place] ?? NaN)
      const least = found[0] + 1.5 * this.coarseness
      this.free[place] = found[0]
      this.threshold[place] = least > found[1] ? least : found[1]
      this.cruise[place] = found[2]
      this.spin[place] = found[3]
      if (place % samplesBetween === samplesBetween - 1) yield
    }
  }

  rpmAt(place: number): number {
    return this.rpm.values[this.rpm.samples[place] ?? -1] ?? NaN
  }

  timeAt(place: number): number {
    return this.rpm.timeline.t[this.rpm.samples[place] ?? -1] ?? NaN
  }

  /** Whether the motor turns: a tenth of the free rpm and more. */
  turns(place: number): boolean {
    return this.rpmAt(place) >= runningShare * this.model.freeRpm
  }

  #quantum(data: LogData): number {
    const { source, sagStep } = this.currents
    if (source === 'sag') return sagStep
    const channel = data.channels.get(source === 'motorAmps' ? 'motorAmps' : 'amps')
    if (channel === undefined) return NaN
    return quantumOf(channel.first())
  }

  /** Twice the lower quartile of the steps between samples while the motor turns. */
  #noise(): number {
    const steps = new Float64Array(this.rpm.samples.length)
    let count = 0
    const { samples, timeline } = this.rpm
    for (let place = 1; place < samples.length; place += 1) {
      if (timeline.segmentOf[samples[place] ?? 0] !== timeline.segmentOf[samples[place - 1] ?? 0]) continue
      if (!this.turns(place) || !this.turns(place - 1)) continue
      const step = Math.abs((this.x[place] ?? NaN) - (this.x[place - 1] ?? NaN))
      if (Number.isNaN(step)) continue
      steps[count] = step
      count += 1
    }
    return count < fewestSteps ? 0 : 2 * rankOfOwn(steps.subarray(0, count), 0.25)
  }
}
