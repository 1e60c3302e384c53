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
  const { samples, timeline, reach } = channel
  const { t, segmentOf } = timeline
  let value = 0
  let seconds = 0
  for (let place = 1; place < samples.length; place += 1) {
    const row = samples[place] ?? 0
    const before = samples[place - 1] ?? 0
    const segment = segmentOf[row] ?? 0
    if (segment !== segmentOf[before] || (t[row] ?? 0) > until(segment)) continue
    const step = (t[row] ?? NaN) - (t[before] ?? NaN)
    const mean = (valueAt(place - 1) + valueAt(place)) / 2
    if (!(step <= reach) || !Number.isFinite(mean)) continue
    value += mean * step
    seconds += step
  }
  return { value, seconds }
}
