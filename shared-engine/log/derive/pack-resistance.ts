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
  const current = Float64Array.from(samples, (row) => amps.values[row] ?? NaN)
  const level = Float64Array.from(samples, (row) => volts.at(row))
  const times = Float64Array.from(samples, (row) => timeline.t[row] ?? NaN)
  const segment = (place: number) => timeline.segmentOf[samples[place] ?? 0]
  const most = current.reduce((one, other) => Math.max(one, other), 0)
  const isCalm = (place: number) =>
    place > 0 &&
    segment(place) === segment(place - 1) &&
    Math.abs((current[place] ?? NaN) - (current[place - 1] ?? NaN)) <= calmShare * most &&
    !Number.isNaN(level[place] ?? NaN)
  const follower = (from: number): number => {
    for (let to = from + 1; to < samples.length && segment(to) === segment(from); to += 1) {
      const later = (times[to] ?? NaN) - (times[from] ?? NaN)
      if (later > latest) break
      const step = Math.abs((current[to] ?? NaN) - (current[from] ?? NaN))
      if (later >= soonest && isCalm(to) && step >= stepShare * most) return to
    }
    return -1
  }
  const steps: [number, number][] = []
  for (let place = 0; place < samples.length;) {
    const to = isCalm(place) ? follower(place) : -1
    if (to === -1) place += 1
    else {
      steps.push([(current[to] ?? 0) - (current[place] ?? 0), (level[to] ?? 0) - (level[place] ?? 0)])
      place = to
    }
  }
  return fitted(steps)
}

function fitted(steps: readonly (readonly [number, number])[]): LoggedResistance | null {
  if (steps.length < fewestPairs) return null
  const squares = steps.reduce((sum, [amps]) => sum + amps * amps, 0)
  const value = -steps.reduce((sum, [amps, volts]) => sum + amps * volts, 0) / squares
  const left = steps.reduce((sum, [amps, volts]) => sum + (volts + value * amps) ** 2, 0)
  const standardError = Math.sqrt(left / ((steps.length - 1) * squares))
  return Number.isFinite(value) ? { value, standardError, pairs: steps.length } : null
}
