import { kindUnits } from '../units/table.ts'
import { controllerFields } from './fields/controller.ts'
import type { Field, FieldTable } from './fields/field.ts'
import { evidenceFields, generalFields } from './fields/general.ts'
import { groundFields } from './fields/ground.ts'
import { motorFields } from './fields/motor.ts'
import { packFields } from './fields/pack.ts'
import { surroundingFields } from './fields/service.ts'
import { stageFields } from './fields/stages.ts'
import { toothFields, trackFields } from './fields/track.ts'
import { vehicleFields } from './fields/vehicle.ts'
import { patternOf } from './path.ts'

export type { Ask, Choice, Condition, Convention, ConventionFactor, Field } from './fields/field.ts'

/**
 * Every entry of the stored build, in the order in which it is written.
 *
 * To add one: a row in its part's file under `fields/`, a line in the schema (its type says whether it is required),
 * a line in the machine, which brings it to SI, and a row in the contract's list in the tests. A file of an older
 * version that lacks it still reads where it has a default or is optional; else the version goes up, with a step.
 */
export const fields = {
  ...generalFields,
  ...packFields,
  ...controllerFields,
  ...motorFields,
  ...stageFields,
  ...trackFields,
  ...toothFields,
  ...vehicleFields,
  ...groundFields,
  ...surroundingFields,
  ...evidenceFields,
}

/** Path of an entry with lists as `*`. */
export type FieldPattern = keyof typeof fields

/** A part of the build: what it is called, and what it would bring where it may be absent whole. */
export interface Group {
  readonly label: string
  readonly brings?: string
  /** Longest list. */
  readonly most?: number
}

/** The groups and lists that hold the entries. */
export const groups: Readonly<Record<string, Group>> = {
  pack: { label: 'Pack' },
  controller: { label: 'Controller' },
  motor: { label: 'Motor' },
  stages: { label: 'Reductions', most: 6 },
  'stages.*': { label: 'Reduction' },
  track: { label: 'Track' },
  'track.tooth': {
    label: 'Drive tooth',
    brings: 'The stresses in the teeth and their limits: shear, bending at the root, bearing.',
  },
  vehicle: { label: 'Machine' },
  ground: { label: 'Ground' },
  'ground.soil': { label: 'Soil or snow' },
  cooling: {
    label: 'Liquid cooling',
    brings: 'The coolant’s rise, and motor and controller cooled by it rather than by air.',
  },
  accessories: { label: 'Accessories', most: 20 },
  'accessories.*': { label: 'Accessory' },
  service: { label: 'How it is run' },
  tolerances: { label: 'Tolerances' },
  'tolerances.*': { label: 'Tolerance' },
  origins: { label: 'Where entries come from' },
}

const table: FieldTable = fields

/**
 * What is known of the entry at a path, or at a pattern.
 *
 * @example fieldOf('stages.0.ratio')?.label // 'Ratio'
 */
export function fieldOf(path: string): Field | undefined {
  return ownField(path) ?? ownField(patternOf(path))
}

function ownField(pattern: string): Field | undefined {
  return Object.hasOwn(table, pattern) ? table[pattern] : undefined
}

/** All patterns, in the order of the table. */
export const fieldPatterns = Object.keys(fields) as readonly FieldPattern[]

/** Whether an entry has to be there wherever its group is; one with a condition only where that holds. */
export function isRequired(field: Field): boolean {
  return field.default === undefined && field.optional !== true
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
 * @example allowedOf(fields['pack.series']) // 'a whole number, 1 to 60 cells'
 */
export function allowedOf(field: Field): string {
  if (field.choices !== undefined) {
    const values = field.choices.map((choice) => choice.value)
    return values.length === 1 ? values.join() : `one of ${values.join(', ')}`
  }
  if (field.kind === 'text')
    return field.longest === undefined ? 'text' : `text of at most ${number(field.longest)} characters`
  const unit = benchUnitOf(field)
  const space = unit === '' || unit === '%' || unit === '°' ? '' : ' '
  const whole = field.whole === true ? 'a whole number, ' : ''
  if (field.low === undefined || field.high === undefined) return `${whole}from ${number(field.low ?? 0)}`
  return `${whole}${number(field.low)} to ${number(field.high)}${space}${unit}`
}
