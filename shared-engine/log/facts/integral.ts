import type { Channel } from '../channel.ts'

/** Sum of a quantity over time, and the time that it covers. */
export interface Integral {
  readonly value: number
  readonly seconds: number
}

/**
 * Integral of a quantity known at a channel's samples: trapezoids between samples near each other, nothing across gaps.
 *
 * @param valueAt by place among the samples; what is no finite number leaves the trapezoids beside it out
 * @param until s in each segment after which nothing counts
 * *Source:* trapezoidal rule.
 */
export function integralOf(
  channel: Channel,
  valueAt: (place: number) => number,
  until: (segment: number) => number = () => Infinity,
): Integral {
  let value = 0
  let seconds = 0
  let before = valueAt(0)
  for (let place = 1; place < channel.samples.length; place += 1) {
    const here = valueAt(place)
    const mean = (before + here) / 2
    before = here
    const step = stepTo(channel, place, until)
    if (Number.isNaN(step) || !Number.isFinite(mean)) continue
    value += mean * step
    seconds += step
  }
  return { value, seconds }
}

/**
 * s from the sample before to a sample, where the two are near enough for a trapezoid; else NaN.
 *
 * @param place among the channel's samples
 * @param until s in each segment after which nothing counts
 */
export function stepTo(
  { samples, timeline, reach }: Channel,
  place: number,
  until: (segment: number) => number,
): number {
  const { t, segmentOf } = timeline
  const row = samples[place] ?? 0
  const before = samples[place - 1] ?? 0
  const segment = segmentOf[row] ?? 0
  if (segment !== segmentOf[before] || (t[row] ?? 0) > until(segment)) return NaN
  const step = (t[row] ?? NaN) - (t[before] ?? NaN)
  return step <= reach ? step : NaN
}
