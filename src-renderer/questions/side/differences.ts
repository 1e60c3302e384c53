import type { Difference } from '../../../shared-engine/compare/compare.ts'
import { differenceFromEngine } from '../../../shared-engine/units/convert.ts'
import { displayUnit, numberText } from '../../../shared-engine/units/display.ts'
import { percentText } from '../../../shared-engine/units/percent.ts'
import type { QuantityKind, UnitSystem } from '../../../shared-engine/units/kinds.ts'

/** Kinds of which a share says nothing: shares themselves, and temperatures, whose zero is only a place on the scale. */
const withoutShare: ReadonlySet<QuantityKind> = new Set<QuantityKind>(['fraction', 'percent', 'temperature'])

/** "+3.2 km/h (8 %)": by how much a figure is more or less; "same" where it is not. Neither is better as such. */
export function differenceText(
  difference: Difference | null,
  kind: QuantityKind,
  system: UnitSystem,
): string {
  if (difference === null) return ''
  const { by, share } = difference
  if (by === 0) return 'same'
  const unit = displayUnit(kind, system, by)
  const size = numberText(Math.abs(differenceFromEngine(by, kind, unit)))
  const told = share !== null && !withoutShare.has(kind) && Math.abs(share) < 10
  const percent = told ? `, ${share < 0 ? '−' : '+'}${percentText(share)}\u202F%` : ''
  return `${by > 0 ? '+' : '−'}${size}${unit === '' ? '' : `\u202F${unit}`}${percent}`
}
