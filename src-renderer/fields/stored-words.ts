import { fieldOf, type Field } from '../../shared-engine/entries/fields.ts'
import { keysOf } from '../../shared-engine/entries/path.ts'
import { oneLine } from '../../shared-engine/mistakes/shown.ts'
import type { UnitSystem } from '../../shared-engine/units/kinds.ts'
import { entryText, fieldUnit, toleranceText, unitWords, type StoredTolerance } from './entry-text.ts'

/** Longest text of an entry that stands in a line. */
const longestText = 40

/**
 * A stored entry in words, outside its field: number with unit, label of a choice, tolerance, text cut short.
 *
 * @example storedWords('vehicle.massKg', 41, 'metric') // '41 kg'
 */
export function storedWords(path: string, value: unknown, system: UnitSystem): string {
  if (value === undefined || value === null || value === '') return '–'
  const [first, spoken = ''] = keysOf(path)
  if (first === 'tolerances' && typeof value === 'object') {
    return toleranceWords(fieldOf(spoken), value as StoredTolerance, system)
  }
  const field = fieldOf(path)
  const choice = field?.choices?.find((one) => one.value === value)
  if (choice !== undefined) return choice.label
  if (typeof value !== 'number' || field === undefined) return oneLine(String(value), longestText)
  return `${grouped(entryText(value, field, system, undefined))} ${unitWords(field, system, value)}`.trim()
}

/** A number as it is typed, as the figures beside it are written: thousands parted, a true minus. */
function grouped(text: string): string {
  const [whole = '', ...rest] = text.split(/(?=\.)/)
  return `${whole.replace(/\B(?=(\d{3})+$)/g, ',').replace(/^-/, '−')}${rest.join('')}`
}

function toleranceWords(field: Field | undefined, tolerance: StoredTolerance, system: UnitSystem): string {
  if (field === undefined) return '–'
  const unit = tolerance.plusMinus === undefined ? '' : fieldUnit(field, system)
  const spread = tolerance.shape === 'normal' ? ', mostly near' : ''
  return (
    `${toleranceText(tolerance, field, fieldUnit(field, system))} ${unit === '%' ? '' : unit}`.trim() + spread
  )
}
