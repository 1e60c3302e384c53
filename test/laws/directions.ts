import { check } from '../../shared-engine/check.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'

/** At most all of it: a load below nothing, a push that points backwards, has no more in hand for being less. */
const marginOf = (row: LimitRow | undefined) => Math.min(1, row?.margin ?? -Infinity)

/** Limits whose margin moved up (or down) between two builds, of those that both have. */
export function moved(
  before: Build,
  after: Build,
  way: 'up' | 'down',
  among: (row: LimitRow) => boolean,
): string[] {
  const [one, other] = [check(before).limits, check(after).limits]
  return one.filter(among).flatMap((row) => {
    const next = other.find(({ id }) => id === row.id)
    if (next === undefined) return []
    const [from, to] = way === 'up' ? [marginOf(row), marginOf(next)] : [marginOf(next), marginOf(row)]
    // 1e-6 of what is used: top speed, which some cases hang on, is a root; no margin at all is below any
    const slack = 1e-6 * Math.max(1, Math.abs(1 - to), from === -Infinity ? 0 : Math.abs(1 - from))
    const isHigher = from === -Infinity ? to > -Infinity : to - from > slack
    return isHigher ? [`${row.id}: ${marginOf(row)} → ${marginOf(next)}`] : []
  })
}
