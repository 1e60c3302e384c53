import { mapped } from '../mapped.ts'
import type { LogData } from '../data.ts'

/** A pack's resistance as a log shows it. */
export interface LoggedResistance {
  /** Ω. */
  readonly value: number
  readonly standardError: number
  /** Steps of current that it comes from. */
  readonly pairs: number
}

const calmShare = 0.05
const stepShare = 0.2
const soonest = 1
const latest = 3
const fewestPairs = 5

/**
 * Resistance of the pack from steps of its current.
 *
 * Between two calm samples, 1 to 3 s apart, whose currents differ by a fifth of the most: R = −Σ ΔI ΔV/Σ ΔI², standard
 * error √(Σ (ΔV + R ΔI)²/((n − 1) Σ ΔI²)).
 *
 * @returns null with fewer than five steps
 * *Source:* least squares through the origin, any statistics text; the two-pulse manner of IEC 61960-3 (internal d.c.
 * resistance) for the idea; what counts as calm: common practice, no source.
 */
export function packResistanceOf({ channels, timeline }: LogData): LoggedResistance | null {
  const amps = channels.get('amps')
  const volts = channels.get('volts')
  if (amps === undefined || volts === undefined) return null
  const { samples } = amps
  const current = amps.along(samples)
  const level = volts.along(samples)
  const times = mapped(samples, (row) => timeline.t[row] ?? NaN)
  const most = current.reduce((one, other) => Math.max(one, other), 0)
  const steps: [number, number][] = []
  let end = 0
  for (const segment of timeline.segments) {
    const first = end
    while (end < samples.length && (samples[end] ?? 0) < segment.end) end += 1
    const follower = followerIn(times, current, level, most, first, end)
    // The first sample of a segment has none before it: nobody knows whether it is calm.
    for (let place = first + 1; place < end;) {
      const to = follower(place)
      if (to === -1) place += 1
      else {
        steps.push([(current[to] ?? 0) - (current[place] ?? 0), (level[to] ?? 0) - (level[place] ?? 0)])
        place = to
      }
    }
  }
  return fitted(steps)
}

/**
 * Looks in one segment for the step that a calm sample begins: the first calm one, 1 to 3 s later, whose current is far
 * enough away; −1 without one.
 */
function followerIn(
  times: Float64Array,
  current: Float64Array,
  level: Float64Array,
  most: number,
  first: number,
  end: number,
): (from: number) => number {
  const isCalm = (place: number) =>
    place > first &&
    Math.abs((current[place] ?? NaN) - (current[place - 1] ?? NaN)) <= calmShare * most &&
    !Number.isNaN(level[place] ?? NaN)
  return (from) => {
    if (!isCalm(from)) return -1
    const [begun, amps] = [times[from] ?? NaN, current[from] ?? NaN]
    for (let to = from + 1; to < end; to += 1) {
      const later = (times[to] ?? NaN) - begun
      if (later > latest) break
      const isFar = Math.abs((current[to] ?? NaN) - amps) >= stepShare * most
      if (isFar && later >= soonest && isCalm(to)) return to
    }
    return -1
  }
}

function fitted(steps: readonly (readonly [number, number])[]): LoggedResistance | null {
  if (steps.length < fewestPairs) return null
  const squares = steps.reduce((sum, [amps]) => sum + amps * amps, 0)
  const value = -steps.reduce((sum, [amps, volts]) => sum + amps * volts, 0) / squares
  const left = steps.reduce((sum, [amps, volts]) => sum + (volts + value * amps) ** 2, 0)
  const standardError = Math.sqrt(left / ((steps.length - 1) * squares))
  return Number.isFinite(value) ? { value, standardError, pairs: steps.length } : null
}
