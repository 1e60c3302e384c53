import type { Evaluated } from '../figures/evaluated.ts'
import type { LimitId } from './id.ts'
import type { LimitRow } from './ledger.ts'
import { limitsOf } from './table.ts'

/** A limit that could apply to a build and was not measured. */
export interface NotJudged {
  readonly id: LimitId
  /** Entries that would bring it; none where a top speed is what lacks. */
  readonly needs: readonly string[]
}

/**
 * Limits that could apply to this build and lack an entry, or the top speed, by id.
 *
 * @param rows of its ledger
 * *Source:* `docs/model.md` §8.
 */
export function notJudgedOf(
  { build, machine, evaluation }: Omit<Evaluated, 'figures'>,
  rows: readonly LimitRow[],
): readonly NotJudged[] {
  const judged = new Set(rows.map(({ id }) => id))
  const found = new Map<LimitId, readonly string[]>()
  for (const { id, lacking, working } of limitsOf(machine)) {
    const needs = judged.has(id) ? null : lacking(build, evaluation)
    if (needs === null) continue
    if (needs.length > 0 || (working.afterTop === true && !evaluation.top.exists)) found.set(id, needs)
  }
  const ids = [...found.keys()].sort()
  return ids.map((id) => ({ id, needs: found.get(id) ?? [] }))
}
