import type { QuantityKind, Unit } from './kinds.ts'
import { kindUnits } from './table.ts'

/**
 * One spelling for all ways to write a unit: `N·m`, `N m`, `N*m` and `Nm` are the same; so are `m/s²` and `m/s^2`,
 * `µ` and `μ`, `Ω` and `ohm`, `°C` and `C`.
 */
export function unitKey(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/μ/g, 'u')
    .replace(/Ω/g, 'ohm')
    .replace(/°\s*(?=[CFK])/gi, '')
    .replace(/°/g, 'deg')
    .replace(/[\s·⋅*.^-]/g, '')
}

function spellingsOf(kind: QuantityKind): ReadonlyMap<string, Unit> {
  const spellings = new Map<string, Unit>()
  for (const unit of kindUnits[kind].units) {
    // As written too: the screen asks for its own symbols thousands of times a second.
    spellings.set(unit.symbol, unit)
    for (const text of [unit.symbol, ...unit.also]) spellings.set(unitKey(text), unit)
  }
  for (const [key, unit] of [...spellings]) {
    const loose = key.toLowerCase()
    if (!unit.exactCase && !spellings.has(loose)) spellings.set(loose, unit)
  }
  return spellings
}

const spellings = new Map<QuantityKind, ReadonlyMap<string, Unit>>()

/**
 * The unit of a kind by any of its spellings; capitals are forgiven where no other size could be meant.
 *
 * @returns the unit, or `null` where the kind has none of this spelling
 * @example unitOf('torque', 'in-lb')?.symbol // 'lbf·in'
 */
export function unitOf(kind: QuantityKind, text: string): Unit | null {
  let ofKind = spellings.get(kind)
  if (ofKind === undefined) spellings.set(kind, (ofKind = spellingsOf(kind)))
  const written = ofKind.get(text)
  if (written !== undefined) return written
  const key = unitKey(text)
  const exactly = ofKind.get(key)
  if (exactly !== undefined) return exactly
  const loosely = ofKind.get(key.toLowerCase())
  return loosely === undefined || loosely.exactCase ? null : loosely
}

/** The unit of a kind by a spelling that this program wrote itself; throws where there is none: a bug of ours. */
export function assertUnit(kind: QuantityKind, text: string): Unit {
  const unit = unitOf(kind, text)
  if (unit === null) throw new Error(`no unit "${text}" of ${kind}`)
  return unit
}

/**
 * A value in a unit as the engine's value of its kind (SI; see QuantityKind for the exceptions).
 *
 * @param value in `unit`
 * @param unit any spelling; absent: the bench unit, that of the stored build's keys
 * @throws where the kind has no such unit
 * @example toEngine(1, 'length', 'in') // 0.0254
 */
export function toEngine(value: number, kind: QuantityKind, unit: string = kindUnits[kind].bench): number {
  const { times, per, plus } = assertUnit(kind, unit)
  return (value * times + plus) / per
}

/** An engine value of a kind in a unit; the inverse of `toEngine`. */
export function fromEngine(value: number, kind: QuantityKind, unit: string = kindUnits[kind].bench): number {
  const { times, per, plus } = assertUnit(kind, unit)
  return (value * per - plus) / times
}

/**
 * What one bench unit of a kind is in the engine's unit, as one number, for entries that are crossed over and over.
 *
 * @throws where the bench unit's scale has a zero of its own: a bug of ours
 * @example benchFactor('inertia') // 1e-7
 */
export function benchFactor(kind: QuantityKind): number {
  const { times, per, plus } = assertUnit(kind, kindUnits[kind].bench)
  if (plus !== 0) throw new Error(`the bench unit of ${kind} is no multiple of the engine's`)
  return times / per
}

/** A difference of two values, a tolerance for one: the factor without the scale's zero. */
export function differenceToEngine(
  value: number,
  kind: QuantityKind,
  unit: string = kindUnits[kind].bench,
): number {
  const { times, per } = assertUnit(kind, unit)
  return (value * times) / per
}

/** The inverse of `differenceToEngine`. */
export function differenceFromEngine(
  value: number,
  kind: QuantityKind,
  unit: string = kindUnits[kind].bench,
): number {
  const { times, per } = assertUnit(kind, unit)
  return (value * per) / times
}

/** Symbols of the units that a kind is read in, the bench unit first. */
export function unitsOffered(kind: QuantityKind): readonly string[] {
  const { bench, units } = kindUnits[kind]
  return [bench, ...units.map((unit) => unit.symbol).filter((symbol) => symbol !== bench)]
}
