import { groundSpeedOfRpm } from '../../vehicle/logged-speed.ts'
import type { Channel } from '../channel.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import { medianOf } from '../order-statistics.ts'

const leastBeltSpeed = 1
const steadySeconds = 2
const steadyRatio = 1.1
const fewestSamples = 5

/**
 * Slip of the track where a speed was logged: the median of 1 − v/v_b at samples with v_b ≥ 1 m/s whose rpm stayed within
 * 10 % over the two seconds before.
 *
 * @returns null with fewer than five samples
 * *Source:* definition of slip, Wong, Theory of Ground Vehicles; what counts as steady: common practice, no source.
 */
export function slipOf(
  { channels }: LogData,
  model: LogModel,
): { readonly median: number; readonly samples: number } | null {
  const speed = channels.get('speed')
  const rpm = channels.get('rpm')
  if (speed === undefined || rpm === undefined) return null
  const steady = new Steadiness(rpm)
  const slips: number[] = []
  for (const row of speed.samples) {
    const belt = groundSpeedOfRpm(model.machine, rpm.at(row), 0)
    if (!steady.at(row) || !(belt >= leastBeltSpeed)) continue
    slips.push(1 - (speed.values[row] ?? NaN) / belt)
  }
  return slips.length < fewestSamples ? null : { median: medianOf(slips), samples: slips.length }
}

/** Whether a channel stayed within a tenth over the seconds before a row; rows are asked in order. */
class Steadiness {
  readonly #channel: Channel
  /** Rows of samples in the stretch that could still be its least, and its most; from `#from…` on. */
  readonly #least: number[] = []
  readonly #most: number[] = []
  #fromLeast = 0
  #fromMost = 0
  #next = 0

  constructor(channel: Channel) {
    this.#channel = channel
  }

  at(row: number): boolean {
    const { samples, values, timeline } = this.#channel
    const value = (at: number) => values[at] ?? NaN
    while (this.#next < samples.length && (samples[this.#next] ?? 0) <= row) {
      const sample = samples[this.#next] ?? 0
      while (this.#least.length > this.#fromLeast && value(this.#least.at(-1) ?? 0) >= value(sample))
        this.#least.pop()
      while (this.#most.length > this.#fromMost && value(this.#most.at(-1) ?? 0) <= value(sample))
        this.#most.pop()
      this.#least.push(sample)
      this.#most.push(sample)
      this.#next += 1
    }
    const isOld = (sample: number | undefined) =>
      sample !== undefined &&
      (timeline.segmentOf[sample] !== timeline.segmentOf[row] ||
        (timeline.t[row] ?? 0) - (timeline.t[sample] ?? 0) > steadySeconds)
    while (isOld(this.#least[this.#fromLeast])) this.#fromLeast += 1
    while (isOld(this.#most[this.#fromMost])) this.#fromMost += 1
    const least = this.#least[this.#fromLeast]
    const most = this.#most[this.#fromMost]
    return least !== undefined && most !== undefined && value(most) <= steadyRatio * value(least)
  }
}
