import { figureOf, limitNamed, type Checked } from '../../shared-engine/index.ts'
import { alarmOf } from '../parts/working-of.ts'
import type { QuantityKind } from '../../shared-engine/units/kinds.ts'

/** A figure or a limit, as the window shows it. */
interface Subject {
  readonly label: string
  readonly value: number | null
  readonly kind: QuantityKind
  /** For a limit: what it is held against. */
  readonly allowed: number | null
}

/** Looks up a figure's name, a limit's id or an alarm's working in the check in force; null where this build has none of it. */
export function subjectOf(checked: Checked, id: string): Subject | null {
  const figure = figureOf(id)
  if (figure !== undefined) {
    return { label: figure.label, value: checked.figures[figure.name], kind: figure.kind, allowed: null }
  }
  const alarm = alarmOf(checked, id)
  if (alarm !== undefined) return { label: alarm.label, value: alarm.value, kind: alarm.kind, allowed: null }
  const limit = limitNamed(id)
  const row = checked.limits.find((one) => one.id === id)
  if (limit === undefined || row === undefined) return null
  return { label: limit.label, value: row.actual, kind: limit.kind, allowed: row.allowed }
}
