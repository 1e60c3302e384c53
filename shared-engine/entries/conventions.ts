import { entryInForce } from './edit.ts'
import type { ConventionFactor } from './fields.ts'
import type { StoredBuild } from './schema.ts'

const numberAt = (stored: StoredBuild, path: string): number | null => {
  const value = entryInForce(stored, path)
  return typeof value === 'number' && value > 0 ? value : null
}

/**
 * A builder's number, read in one of the conventions in use, as the entry that the build stores.
 *
 * @param value - in the bench unit of the entry
 * @param factor - that of the convention: a number, or one that depends on the build
 * @param stored - the build, for pole pairs, cells and loops
 * @returns the entry; null where no factor leads to it or the build lacks what it takes
 *
 * @example entryOfConvention(35, 2, stored) // 70
 */
export function entryOfConvention(
  value: number,
  factor: ConventionFactor,
  stored: StoredBuild,
): number | null {
  if (factor === null) return null
  if (typeof factor === 'number') return value * factor
  if (factor === 'inverse') return value === 0 ? null : 1 / value
  if (factor === 'parallel' || factor === 'perLoop') {
    const count = numberAt(stored, factor === 'parallel' ? 'pack.parallel' : 'track.count')
    if (count === null) return null
    return factor === 'parallel' ? value * count : value / count
  }
  const poles = numberAt(stored, 'motor.poleCount')
  if (poles === null) return null
  return factor === 'polePairs' ? (value * poles) / 2 : (value * 2) / poles
}
