import type { LimitRow } from '../../../shared-engine/index.ts'
import type { LimitGroup } from '../../../shared-engine/limits/group.ts'
import { consequenceOf } from '../../../shared-engine/explain/consequences.ts'
import { marginWords } from '../../../shared-engine/limits/margin-words.ts'
import { limitOf } from '../../../shared-engine/index.ts'

/** So many of what is over are told in a sentence each; the table has all. */
const mostTold = 3

/**
 * How a group stands, in a few words: the worst by name, what it does, and how many are over.
 *
 * @param rests limits that would stand otherwise with another likely value of what nobody has entered
 */
export function groupSentence(
  group: LimitGroup,
  rows: readonly LimitRow[],
  rests: Pick<ReadonlyMap<string, unknown>, 'has'> = new Map(),
): string {
  const [worst] = rows
  if (worst === undefined) return ''
  const over = rows.filter(({ standing }) => standing === 'over')
  const label = limitOf(worst.id)?.label ?? worst.id
  const margin = marginWords(worst.margin, limitOf(worst.id)?.sense)
  const count = `${rows.length} ${rows.length === 1 ? 'check' : 'checks'}`
  if (over.length > 0) {
    const told = over.slice(0, mostTold).map(({ id }) => consequenceOf(id))
    const lasts = group === 'lasts' ? ': it holds for a while, and wears out' : ''
    const soft = over.filter(({ id }) => rests.has(id)).length
    const assumed =
      soft === 0 ? '' : soft === over.length ? ', by assumed numbers' : `, ${soft} of them by assumed numbers`
    return `${label} first: ${margin}. ${told.join(' ')} ${over.length} of ${count} ${over.length === 1 ? 'is' : 'are'} over${assumed}${lasts}.`
  }
  return `Nothing, of ${count}: ${label.charAt(0).toLowerCase()}${label.slice(1)} has the least in hand, ${margin}.`
}
