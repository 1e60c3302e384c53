import { entryOfConvention } from '../../shared-engine/entries/conventions.ts'
import type { ConventionFactor } from '../../shared-engine/entries/fields.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import type { TypedEntry } from './entry-text.ts'

/** A number in another convention as the entry that the build stores; a tolerance in units goes with it. */
export function converted(
  typed: TypedEntry,
  factor: Exclude<ConventionFactor, null>,
  build: Build,
): TypedEntry {
  const { value, tolerance } = typed
  // Every build has the poles, cells and loops that a factor may ask for; only the inverse of 0 is nothing, and no range
  // takes what is without bound.
  const entry = entryOfConvention(value, factor, build) ?? Infinity
  const shown = Number(entry.toPrecision(12))
  if (tolerance?.plusMinus === undefined) return { value: shown, tolerance }
  if (factor === 'inverse') return { value: shown, tolerance: null }
  const times = entryOfConvention(1, factor, build) ?? 1
  return { value: shown, tolerance: { ...tolerance, plusMinus: tolerance.plusMinus * Math.abs(times) } }
}
