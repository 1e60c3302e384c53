import { kindUnits } from '../units/table.ts'
import { buildRows } from './parts/build.ts'
import { patternOf } from './path.ts'
import type { Field } from './rows/row.ts'
import { tableOf, type Group } from './rows/walk.ts'

export type { Ask, Choice, Condition, Convention, ConventionFactor, Field } from './rows/row.ts'

/** Every entry and part of the build. */
export const entryTable = tableOf(buildRows)

/** All patterns (paths of entries with lists as `*`), in the order in which a build is written. */
export const fieldPatterns: readonly string[] = [...entryTable.fields.keys()]

/** The groups and lists that hold the entries, by their pattern. */
export const groups: Readonly<Record<string, Group>> = Object.fromEntries(entryTable.groups)

/**
 * What is known of the entry at a path, or at a pattern.
 *
 * @example fieldOf('stages.0.ratio')?.label // 'Ratio'
 */
export function fieldOf(path: string): Field | undefined {
  return entryTable.fields.get(path) ?? entryTable.fields.get(patternOf(path))
}

/** Whether an entry has to be there wherever its group is; one with a condition only where that holds. */
export function isRequired(field: Field): boolean {
  return field.default === undefined && field.defaultFrom === undefined && field.optional !== true
}

/** The unit of an entry as the build stores it; empty for text and plain numbers. */
export function benchUnitOf(field: Field): string {
  return field.counted ?? kindUnits[field.kind].bench
}

function number(value: number): string {
  const [whole = '', part] = String(value).replace('-', '−').split('.')
  if (whole.includes('e')) return String(value)
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  return part === undefined ? grouped : `${grouped}.${part}`
}

/**
 * What an entry may be, with its unit, for a sentence.
 *
 * @example allowedOf(fieldOf('pack.series')) // 'a whole number, 1 to 60 cells'
 */
export function allowedOf(field: Field): string {
  if (field.choices !== undefined) {
    const values = field.choices.map((choice) => choice.value)
    return values.length === 1 ? values.join() : `one of ${values.join(', ')}`
  }
  if (field.document === true)
    return `keys and values in braces, at most ${number(field.longest ?? Infinity)} characters`
  if (field.flag === true) return 'true or false'
  if (field.kind === 'text')
    return field.longest === undefined ? 'text' : `text of at most ${number(field.longest)} characters`
  const unit = benchUnitOf(field)
  const space = unit === '' || unit === '°' ? '' : ' '
  const whole = field.whole === true ? 'a whole number, ' : ''
  if (field.low === undefined || field.high === undefined) return `${whole}from ${number(field.low ?? 0)}`
  return `${whole}${number(field.low)} to ${number(field.high)}${space}${unit}`
}
