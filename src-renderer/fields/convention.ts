import type { Build } from '../../shared-engine/build/schema.ts'
import type { ConventionFactor } from '../../shared-engine/build/fields.ts'
import type { TypedEntry } from './entry-text.ts'

/** A number in another convention as the entry that the build stores; a tolerance in units goes with it. */
export function converted(
  typed: TypedEntry,
  factor: Exclude<ConventionFactor, null>,
  build: Build,
): TypedEntry {
  const { value, tolerance } = typed
  if (factor === 'inverse')
    return { value: 1 / value, tolerance: tolerance?.plusMinus === undefined ? tolerance : null }
  const times = timesOf(factor, build)
  const shifted =
    tolerance?.plusMinus === undefined
      ? tolerance
      : { ...tolerance, plusMinus: tolerance.plusMinus * Math.abs(times) }
  return { value: Number((value * times).toPrecision(12)), tolerance: shifted }
}

function timesOf(factor: Exclude<ConventionFactor, null | 'inverse'>, { motor, pack, track }: Build): number {
  if (typeof factor === 'number') return factor
  if (factor === 'polePairs') return motor.poleCount / 2
  if (factor === 'perPolePair') return 2 / motor.poleCount
  if (factor === 'parallel') return pack.parallel
  return 1 / track.count
}
