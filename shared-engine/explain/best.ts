import type { Checked } from '../check.ts'
import { bestPointsOf, type BestPoint } from '../motor/best-points.ts'
import { formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { rpmOf } from '../units/rpm.ts'

/** A point of one motor's curve at full throttle, for programs. */
interface BestFigures {
  readonly motorRpm: number
  readonly motorAmps: number
  readonly shaftWatts: number
  /** Shaft power over shaft power, copper and iron losses; 0 to 1. */
  readonly efficiency: number
}

const figuresOf = ({ speed, amps, shaftPower, efficiency }: BestPoint): BestFigures => ({
  motorRpm: rpmOf(speed),
  motorAmps: amps,
  shaftWatts: shaftPower,
  efficiency,
})

/**
 * Most shaft power and best efficiency of one motor at full throttle, in the running state; null where it cannot turn itself.
 *
 * *Source:* as {@link bestPointsOf}.
 */
export function bestOf({
  evaluation,
}: Checked): { readonly power: BestFigures; readonly efficiency: BestFigures } | null {
  const best = bestPointsOf(evaluation.drive)
  return best === null ? null : { power: figuresOf(best.power), efficiency: figuresOf(best.efficiency) }
}

/** The same in a sentence; empty where the motor cannot turn itself. */
export function bestWords(checked: Checked, system: UnitSystem): string {
  const best = bestOf(checked)
  if (best === null) return ''
  const rpm = (point: BestFigures) => formatText(point.motorRpm, 'rpm', system)
  const most = `${formatText(best.power.shaftWatts, 'watts', system)} at ${rpm(best.power)}`
  const finest = `${formatText(best.efficiency.efficiency, 'fraction', system)} at ${rpm(best.efficiency)}`
  return `Of one motor at full throttle: most shaft power ${most}, best efficiency ${finest}.`
}
