import { tableCsv } from '../../../shared-engine/draw/table.ts'
import { figureTable, limitOf } from '../../../shared-engine/index.ts'
import type { Found } from './search.svelte.ts'

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
    row.limits[0] === undefined ? '' : (limitOf(row.limits[0].id)?.label ?? ''),
    row.alternatives.count,
    ...figureTable.map((figure) => row.figures[figure.name]),
  ])
  return tableCsv({ columns, rows })
}
