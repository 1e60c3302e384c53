import { mapped } from '../mapped.ts'
import type { Channel } from '../channel.ts'
import { medianOfThree, quantumOf } from '../order-statistics.ts'

/** s before a moment from which the pack's volts at rest are looked for. *Source:* common practice, no source. */
const lookBack = 20

/**
 * What the pack would show at rest: V_r at a time is the most, from 20 s before it to the segment's end, of the volts as
 * medians of three, at a segment's ends the lesser of two.
 *
 * *Source:* assumption: within the rest of a segment the load is off for a moment, and charge falls little.
 */
export class RestVolts {
  /** Per segment: times of the volts' samples, and the most from each on. */
  readonly #times: Float64Array[] = []
  readonly #most: Float64Array[] = []

  constructor(volts: Channel) {
    const { timeline, samples, values } = volts
    let place = 0
    for (const { end } of timeline.segments) {
      const from = place
      while (place < samples.length && (samples[place] ?? 0) < end) place += 1
      const rows = samples.subarray(from, place)
      const smooth = smoothed(mapped(rows, (row) => values[row] ?? NaN))
      for (let at = smooth.length - 2; at >= 0; at -= 1) {
        smooth[at] = Math.max(smooth[at] ?? NaN, smooth[at + 1] ?? NaN)
      }
      this.#times.push(mapped(rows, (row) => timeline.t[row] ?? NaN))
      this.#most.push(smooth)
    }
  }

  /** V_r, V, at a time of a segment; NaN where no volts follow. */
  at(segment: number, time: number): number {
    const times = this.#times[segment] ?? new Float64Array()
    let low = 0
    let high = times.length
    while (low < high) {
      const middle = (low + high) >>> 1
      if ((times[middle] ?? NaN) >= time - lookBack) high = middle
      else low = middle + 1
    }
    return this.#most[segment]?.[low] ?? NaN
  }
}

function smoothed(values: Float64Array): Float64Array {
  const last = values.length - 1
  return values.map((value, place) => {
    if (last === 0) return value
    if (place === 0) return Math.min(value, values[1] ?? NaN)
    if (place === last) return Math.min(value, values[last - 1] ?? NaN)
    return medianOfThree(values[place - 1] ?? NaN, value, values[place + 1] ?? NaN)
  })
}

/**
 * Least current that sag can show: one step of the volts over the pack's resistance.
 *
 * @param packResistance R_b, Ω
 * @returns A; NaN where the volts never move
 * *Source:* Ohm's law.
 */
export function sagStepOf(volts: Channel, packResistance: number): number {
  return quantumOf(volts.first()) / packResistance
}
