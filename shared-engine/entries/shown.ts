import { differenceFromEngine, differenceToEngine, fromEngine, toEngine } from '../units/convert.ts'
import { displayUnit } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { kindUnits } from '../units/table.ts'
import type { Field } from './fields.ts'

/** A tolerance as the build stores it: in percent of the entry, or in the entry's bench unit. */
export interface StoredTolerance {
  readonly plusMinusPercent?: number | undefined
  readonly plusMinus?: number | undefined
  readonly shape: 'uniform' | 'normal'
}

/** The unit that a field shows and takes bare numbers in: the build's own, or the imperial one. */
export function fieldUnit(field: Field, system: UnitSystem): string {
  const { bench } = kindUnits[field.kind]
  return system === 'metric' ? bench : displayUnit(field.kind, system)
}

/** What is counted, one of it, where no letter is taken off. */
export const oneOf: Readonly<Record<string, string>> = { teeth: 'tooth', pitches: 'pitch' }

/**
 * Words for the unit beside the field; what is counted, where something is.
 *
 * @example unitWords({ label: 'Motors', kind: 'count', counted: 'motors', help: '' }, 'metric', 1) // 'motor'
 */
export function unitWords(field: Field, system: UnitSystem, value?: number): string {
  const { counted } = field
  if (counted === undefined) return fieldUnit(field, system)
  return value === 1 ? (oneOf[counted] ?? counted.replace(/s$/, '')) : counted
}

/** Digits of an entry that is only looked at: more are noise of a conversion, or of a file that another program wrote. */
const shownDigits = 6
/** Digits that a stored number can hold. */
const allDigits = 15

/** A stored number as the field shows it, in the unit of the system; six digits at most. */
export function entryText(
  value: number,
  field: Field,
  system: UnitSystem,
  tolerance: StoredTolerance | undefined,
  most = shownDigits,
): string {
  const unit = fieldUnit(field, system)
  const { bench } = kindUnits[field.kind]
  const shown = unit === bench ? value : fromEngine(toEngine(value, field.kind), field.kind, unit)
  return `${plain(shown, unit === bench ? most : shownDigits)}${toleranceText(tolerance, field, unit)}`
}

/** The same for the field that is being typed into: in the build's own unit to the last digit, so that none is lost. */
export function entryWhole(
  value: number,
  field: Field,
  system: UnitSystem,
  tolerance: StoredTolerance | undefined,
): string {
  return entryText(value, field, system, tolerance, allDigits)
}

/** " ± 5 %", in percent or in the unit given; empty without one. */
export function toleranceText(tolerance: StoredTolerance | undefined, field: Field, unit: string): string {
  if (tolerance?.plusMinusPercent !== undefined) {
    return ` ± ${plain(tolerance.plusMinusPercent, shownDigits)} %${unit === '%' ? ' of it' : ''}`
  }
  if (tolerance?.plusMinus === undefined) return ''
  const difference = differenceFromEngine(
    differenceToEngine(tolerance.plusMinus, field.kind),
    field.kind,
    unit,
  )
  return ` ± ${plain(difference, shownDigits)}${unit === '%' ? ' % points' : ''}`
}

/** A number in so many digits, as it can be typed back. */
export function plain(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits)) + 0)
}
