import { tableCsv } from '../../../shared-engine/draw/table.ts'
import { figureTable, limitOf, type LimitRow } from '../../../shared-engine/index.ts'
import { worstRow } from '../../../shared-engine/limits/worst.ts'
import type { Found } from './search.svelte.ts'

/** The label of the limit with the worst margin. */
function worstLabelOf(limits: readonly LimitRow[]): string {
  const worst = worstRow(limits)
  return worst === undefined ? '' : (limitOf(worst.id)?.label ?? '')
}

/** Candidates as a table: entries, worst margin and limit, aims, then every figure in the engine's units by its name. */
export function candidatesCsv({ plan, outcome }: Pick<Found, 'plan' | 'outcome'>): string {
  const columns = [
    ...plan.axes.map((axis) => axis.path),
    'worstMargin',
    'worstLimit',
    'alternatives',
    ...figureTable.map((figure) => figure.name),
  ].map((label) => ({ label, unit: '' }))
  const rows = outcome.rows.map((row) => [
    ...row.choices.map(({ value, motor }) => motor?.name ?? value),
    row.margin,
    worstLabelOf(row.limits),
    row.alternatives.count,
    ...figureTable.map((figure) => row.figures[figure.name]),
  ])
  return tableCsv({ columns, rows })
}
