import { limitOf, type LimitRow } from '../../shared-engine/index.ts'

/** The worst limit of each part: the ledger is in order, so it is the first one met. */
export function worstByPart(limits: readonly LimitRow[]): ReadonlyMap<string, LimitRow> {
  const worst = new Map<string, LimitRow>()
  for (const row of limits) {
    const part = limitOf(row.id)?.part
    if (part !== undefined && !worst.has(part)) worst.set(part, row)
  }
  return worst
}
