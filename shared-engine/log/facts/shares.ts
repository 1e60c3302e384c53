import type { LogData } from '../data.ts'
import type { Currents } from '../derive/current.ts'
import { follows } from '../episodes/sampled.ts'

/** How long a log was at each tenth of duty, throttle or current. */
export interface Shares {
  readonly sharesBy: 'duty' | 'throttle' | 'amps' | null
  /** Ten shares of the time, the first from 0 to 0.1 and what is below. */
  readonly shares: readonly number[] | null
}

const parts = 10

/**
 * Shares of time by tenths of duty, else throttle, else motor current over that at top speed: each rpm sample stands for
 * the seconds after it.
 *
 * @param topAmps the equilibrium's motor current, A; NaN without one
 */
export function sharesOf(data: LogData, currents: Currents, topAmps: number): Shares {
  const rpm = data.channels.get('rpm')
  const set = data.channels.get('duty') ?? data.channels.get('throttle')
  if (rpm === undefined) return { sharesBy: null, shares: null }
  const { samples, timeline } = rpm
  const levelAt = (place: number) =>
    set === undefined ? (currents.motor[place] ?? NaN) / topAmps : set.at(samples[place] ?? 0)
  const seconds = new Float64Array(parts)
  for (let place = 0; place + 1 < samples.length; place += 1) {
    const level = levelAt(place)
    if (!follows(rpm, place + 1) || Number.isNaN(level)) continue
    const part = Math.min(parts - 1, Math.max(0, Math.floor(level * parts)))
    const step = (timeline.t[samples[place + 1] ?? 0] ?? 0) - (timeline.t[samples[place] ?? 0] ?? 0)
    seconds[part] = (seconds[part] ?? 0) + step
  }
  const all = seconds.reduce((one, other) => one + other, 0)
  if (!(all > 0)) return { sharesBy: null, shares: null }
  return {
    sharesBy: set === undefined ? 'amps' : (set.id as 'duty' | 'throttle'),
    shares: Array.from(seconds, (part) => part / all),
  }
}
