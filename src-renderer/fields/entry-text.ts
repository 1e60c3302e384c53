import { allowedOf, benchUnitOf, type Field } from '../../shared-engine/entries/fields.ts'
import { fieldUnit, oneOf, plain, type StoredTolerance } from '../../shared-engine/entries/shown.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import { differenceFromEngine, fromEngine, toEngine } from '../../shared-engine/units/convert.ts'
import { readEntry } from '../../shared-engine/units/entry.ts'
import type { UnitSystem } from '../../shared-engine/units/kinds.ts'
import { kindUnits } from '../../shared-engine/units/table.ts'

/** What a builder typed, ready to be stored. */
export interface TypedEntry {
  /** In the bench unit. */
  readonly value: number
  readonly tolerance: StoredTolerance | null
}

/** Reads what was typed into a number's field: any unit, sums, tolerance; range in the unit that is shown. */
export function readTyped(
  typed: string,
  path: string,
  field: Field,
  system: UnitSystem,
  shape: 'uniform' | 'normal' = 'uniform',
): TypedEntry | string {
  const unit = fieldUnit(field, system)
  const { bench } = kindUnits[field.kind]
  const inRange = (value: number) => {
    const stored = fromEngine(value, field.kind, bench)
    return stored >= (field.low ?? -Infinity) && stored <= (field.high ?? Infinity)
  }
  const reading = readWithin(withoutCounted(typed, field), field.kind, { unit, path }, inRange)
  if (!reading.ok) return troubleOf(reading.mistakes)
  const value = Number(fromEngine(reading.value.value, field.kind, bench).toPrecision(15))
  const { low = -Infinity, high = Infinity } = field
  if (value < low || value > high) return `Allowed: ${rangeText(field, system)}.${shareHint(value, field)}`
  if (field.whole === true && !Number.isInteger(value)) return `Allowed: ${rangeText(field, system)}.`
  const { tolerance } = reading.value
  if (tolerance === undefined) return { value, tolerance: null }
  if ('plusMinusPercent' in tolerance) {
    return { value, tolerance: { plusMinusPercent: tolerance.plusMinusPercent, shape } }
  }
  const plusMinus = Number(differenceFromEngine(tolerance.plusMinus, field.kind, bench).toPrecision(15))
  return { value, tolerance: { plusMinus, shape } }
}

/** A share typed as a part of one, "0.97", where percent are asked for: what is meant, said. */
function shareHint(value: number, field: Field): string {
  const percent = Number((100 * value).toPrecision(12))
  const isShare = benchUnitOf(field) === '%' && value > 0 && value <= 1 && percent >= (field.low ?? 0)
  return isShare ? ` ${value} of the whole is ${percent} %.` : ''
}

/** What was typed without the word for what is counted, where it ends with it: "13 teeth" is 13. */
function withoutCounted(typed: string, { counted }: Field): string {
  if (counted === undefined) return typed
  const words = [counted, oneOf[counted] ?? counted.replace(/s$/, '')]
  const word = words.find((ending) => typed.trim().toLowerCase().endsWith(` ${ending}`))
  return word === undefined ? typed : typed.trim().slice(0, -word.length)
}

/**
 * Reads what was typed; a comma that could be read both ways ("40,000") is read the one way that gives an allowed value,
 * and asked about where both do.
 *
 * @param allowed whether a value, in the engine's unit, may be
 */
export function readWithin(
  typed: string,
  kind: Field['kind'],
  place: Parameters<typeof readEntry>[2],
  allowed: (value: number) => boolean,
): ReturnType<typeof readEntry> {
  const reading = readEntry(typed, kind, place)
  if (reading.ok || reading.mistakes[0]?.code !== 'entry-ambiguous' || /[±%]/.test(typed)) return reading
  const ways = [typed.replace(/,(?=\d{3}(?!\d))/g, ''), typed.replace(',', '.')]
  const possible = ways
    .map((way) => readEntry(way, kind, place))
    .filter((way) => way.ok && allowed(way.value.value))
  return possible.length === 1 ? (possible[0] ?? reading) : reading
}

/** What a field takes, in the unit it shows. */
export function rangeText(field: Field, system: UnitSystem): string {
  const unit = fieldUnit(field, system)
  const { bench } = kindUnits[field.kind]
  if (unit === bench || field.low === undefined || field.high === undefined) return allowedOf(field)
  const shown = (value: number) => plain(fromEngine(toEngine(value, field.kind), field.kind, unit), 4)
  return `${shown(field.low)} to ${shown(field.high)} ${unit}`
}

/** What is said of a number that is taken, but lies outside of what builds mostly have; empty where it does not. */
export function unusualText(value: number, field: Field, system: UnitSystem): string {
  const { usual } = field
  if (usual === undefined || (value >= usual[0] && value <= usual[1])) return ''
  const { bench } = kindUnits[field.kind]
  const unit = fieldUnit(field, system)
  const shown = usual.map((end) => plain(fromEngine(toEngine(end, field.kind, bench), field.kind, unit), 3))
  return `Unusual: mostly ${shown.join(' to ')} ${field.counted ?? unit}. It is taken; check the unit and the point.`
}

/** The mistakes of one entry as text for its field: what is allowed, without the path, which the field shows. */
export function troubleOf(mistakes: readonly Mistake[]): string {
  const [first] = mistakes
  if (first === undefined) return ''
  if (
    first.code === 'entry-not-understood' ||
    first.code === 'entry-wrong-unit' ||
    first.code === 'entry-ambiguous'
  ) {
    return sentenceOf({ ...first, kept: '' })
  }
  return mistakes.map((mistake) => sentenceOf({ ...mistake, kept: '' })).join(' ')
}

/** A step of a number: one unit of its second figure; a whole number where only those are allowed. */
function stepOf(value: number, field: Field): number {
  if (field.whole === true) return field.counted === 'poles' ? 2 : 1
  if (Math.abs(value) < 1e-6) return field.kind === 'none' ? 0.01 : 1
  return 10 ** (Math.floor(Math.log10(Math.abs(value)) + 1e-9) - 1)
}

/** The number one or more steps on, in bench units, within the field's range and free of rounding dust. */
export function stepped(value: number, steps: number, field: Field): number {
  const step = stepOf(value, field)
  const moved = Number((Math.round(value / step) * step + steps * step).toPrecision(12))
  return Math.min(field.high ?? Infinity, Math.max(field.low ?? -Infinity, moved))
}

export { benchUnitOf }
export {
  entryText,
  entryWhole,
  fieldUnit,
  toleranceText,
  unitWords,
  type StoredTolerance,
} from '../../shared-engine/entries/shown.ts'
