import { describeLimit, figureTable, type Checked } from '../../shared-engine/index.ts'
import { format, type Shown } from '../../shared-engine/units/display.ts'
import type { QuantityKind, UnitSystem } from '../../shared-engine/units/kinds.ts'

/** A figure or a limit, as the window shows it. */
export interface Subject {
  readonly label: string
  readonly value: number | null
  readonly kind: QuantityKind
  readonly caution?: string
  shown(system: UnitSystem): Shown
}

/** Looks up a figure's name or a limit's id in the check in force. */
export function subjectOf(checked: Checked, id: string): Subject {
  const figure = figureTable.find((one) => one.name === id)
  if (figure !== undefined) return subject(figure.label, checked.figures[figure.name], figure.kind)
  const row = checked.limits.find((one) => one.id === id)
  const { label, kind, caution } = describeLimit(id)
  return subject(label, row?.actual ?? null, kind, caution)
}

function subject(label: string, value: number | null, kind: QuantityKind, caution?: string): Subject {
  const shown = (system: UnitSystem) => format(value, kind, system)
  return caution === undefined ? { label, value, kind, shown } : { label, value, kind, caution, shown }
}
