import { limitOf, type LimitRow, type UnitSystem } from '../../shared-engine/index.ts'
import { caseWords } from '../../shared-engine/cases/case.ts'
import { tableTabs } from '../../shared-engine/draw/table.ts'
import { marginText } from '../../shared-engine/limits/margin-words.ts'
import { format, oneText } from '../../shared-engine/units/display.ts'

/** The ledger as text: a line for each limit, worst first as they stand, cells between tabs for a spreadsheet. */
export function limitsText(rows: readonly LimitRow[], system: UnitSystem): string {
  const columns = ['Limit', 'Case', 'Actual', 'Allowed', 'Margin', 'Standing'].map((label) => ({
    label,
    unit: '',
  }))
  const cells = rows.map((row) => {
    const limit = limitOf(row.id)
    const shown = (value: number | null) => oneText(format(value, limit?.kind ?? 'none', system))
    return [
      limit?.label ?? row.id,
      caseWords[row.case],
      shown(row.actual),
      shown(row.allowed),
      marginText(row.margin, limit?.sense),
      row.standing,
    ]
  })
  return tableTabs({ columns, rows: cells })
}
