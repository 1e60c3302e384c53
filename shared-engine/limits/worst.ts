import { isDecisive } from './group.ts'
import type { LimitRow } from './ledger.ts'
import { limitOf } from './table.ts'

/** Worst of what decides: the row with the smallest margin outside of mishaps, by id where several have it. */
export function worstRow<Row extends Pick<LimitRow, 'id' | 'group' | 'margin'>>(
  rows: readonly Row[],
): Row | undefined {
  const margin = (row: Row) => row.margin ?? -Infinity
  return rows
    .filter(({ group }) => isDecisive(group))
    .reduce<Row | undefined>((worst, row) => {
      if (worst === undefined || margin(row) < margin(worst)) return row
      return margin(row) === margin(worst) && row.id < worst.id ? row : worst
    }, undefined)
}

/** The worst limit of each part in ordinary use. */
export function worstByPart(rows: readonly LimitRow[]): ReadonlyMap<string, LimitRow> {
  const byPart = new Map<string, LimitRow>()
  for (const row of rows) {
    const part = limitOf(row.id)?.part
    const before = part === undefined ? undefined : byPart.get(part)
    const worst = worstRow(before === undefined ? [row] : [before, row])
    if (part !== undefined && worst !== undefined) byPart.set(part, worst)
  }
  return byPart
}
