import type { Comparison } from '../../../shared-engine/compare/compare.ts'
import { tableTabs } from '../../../shared-engine/draw/table.ts'
import { limitOf, type UnitSystem } from '../../../shared-engine/index.ts'
import { marginText } from '../../../shared-engine/limits/margin-words.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import { storedWords } from '../../fields/stored-words.ts'

/** The comparison as text: what differs, figures, margins; a column for each build, cells between tabs for a spreadsheet. */
export function comparisonText(
  { figures, entries, limits }: Comparison,
  names: readonly string[],
  system: UnitSystem,
): string {
  const columns = ['', ...names].map((label) => ({ label, unit: '' }))
  const differing = entries.map(({ path, label, values }) => [
    label,
    ...values.map((value) => storedWords(path, value, system)),
  ])
  const figured = figures
    .filter(({ values }) => values.some((value) => value !== null))
    .map(({ figure, values }) => [
      figure.label,
      ...values.map((value) => formatText(value, figure.kind, system)),
    ])
  const held = limits.map(({ id, label, rows }) => [
    label,
    ...rows.map((row) => (row === null ? '' : marginText(row.margin, limitOf(id)?.sense))),
  ])
  return tableTabs({ columns, rows: [...differing, ...figured, ...held] })
}
