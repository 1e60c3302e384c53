import type { LimitId } from '../../../shared-engine/limits/id.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import type { Remedy } from '../../../shared-engine/remedy/remedy.ts'
import { limitOf } from '../../../shared-engine/index.ts'
import { format, oneText } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { entryText, unitWords } from '../../fields/entry-text.ts'

/**
 * An entry's value as a person says it: a number with its unit, or the words of a choice. In the entry's own unit it is the
 * very number, for a rounded one may not hold any more; in another one it has four figures.
 */
export function entryWords(path: string, value: number | string | null, system: UnitSystem): string {
  const field = fieldOf(path)
  if (value === null) return 'not entered'
  if (field === undefined) return String(value)
  if (typeof value === 'string')
    return field.choices?.find((choice) => choice.value === value)?.label ?? value
  const unit = unitWords(field, system, value)
  const whole = entryText(value, field, system, undefined)
  const isOwn = field.whole === true || Number(whole) === value
  const text = isOwn ? whole : String(Number(Number(whole).toPrecision(4)))
  return unit === '' ? text : `${text}\u202F${unit}`
}

/** "41.3 → 38.2 km/h", or that it stays. */
export function speedWords({ topSpeedBefore, topSpeedAfter }: Remedy, system: UnitSystem): string {
  if (topSpeedAfter === null) return 'no longer gets going'
  const [before, after] = [format(topSpeedBefore, 'speed', system), format(topSpeedAfter, 'speed', system)]
  return before.text === after.text ? 'stays' : `${before.text} → ${oneText(after)}`
}

/** What it does to the other limits, each kind of change in a sentence; empty where it does nothing. */
export function effectsOf({ newlyOver, newlyNear, cleared }: Remedy) {
  const names = (ids: readonly LimitId[]) => ids.map((id) => limitOf(id)?.label ?? id).join(', ')
  return { over: names(newlyOver), near: names(newlyNear), cleared: names(cleared) }
}
