import type { SearchRow } from '../../../shared-engine/search/row.ts'
import type { SearchPlan } from '../../../shared-engine/search/space.ts'
import type { QuantityKind } from '../../../shared-engine/index.ts'

/** A column of numbers in the table of candidates. */
interface Column {
  readonly id: string
  readonly label: string
  readonly kind: QuantityKind
  readonly valueOf: (row: SearchRow) => number | null
}

/** Aims first, then what is always of interest, then what was varied. */
export function columnsOf(plan: SearchPlan): Column[] {
  const aims = plan.aims.map(({ measure }, at): Column => ({
    id: measure.name,
    label: measure.label,
    kind: measure.kind,
    valueOf: (row) => row.aims[at] ?? null,
  }))
  const usual: Column[] = [
    { id: 'topSpeedMps', label: 'Top speed', kind: 'speed', valueOf: (row) => row.figures.topSpeedMps },
    { id: 'ratio', label: 'Ratio', kind: 'none', valueOf: (row) => row.figures.ratio },
  ]
  return [...aims, ...usual.filter((one) => aims.every((aim) => aim.id !== one.id))]
}

/** Rows by a column, those without the number last; as found where no column is chosen. */
export function sortedRows(
  rows: readonly SearchRow[],
  column: Column | null,
  falling: boolean,
): readonly SearchRow[] {
  if (column === null) return rows
  const sign = falling ? -1 : 1
  return rows.toSorted((one, other) => {
    const [first, second] = [column.valueOf(one), column.valueOf(other)]
    if (first === null || second === null) return Number(first === null) - Number(second === null)
    return sign * (first - second)
  })
}
