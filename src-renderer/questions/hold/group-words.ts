import type { LimitRow } from '../../../shared-engine/index.ts'
import type { LimitGroup } from '../../../shared-engine/limits/group.ts'
import { consequenceOf } from '../../../shared-engine/explain/consequences.ts'
import { marginWords } from '../../../shared-engine/limits/margin-words.ts'
import { limitOf } from '../../../shared-engine/index.ts'

/** So many of what is over are told in a sentence each; the table has all. */
const mostTold = 3

/** How a group stands, in a few words: the worst by name, what it does, and how many are over or near. */
export function groupSentence(group: LimitGroup, rows: readonly LimitRow[]): string {
  const [worst] = rows
  if (worst === undefined) return ''
  const over = rows.filter(({ standing }) => standing === 'over')
  const label = limitOf(worst.id)?.label ?? worst.id
  const margin = marginWords(worst.margin, limitOf(worst.id)?.sense)
  const count = `${rows.length} ${rows.length === 1 ? 'check' : 'checks'}`
  if (over.length > 0) {
    const told = over.slice(0, mostTold).map(({ id }) => consequenceOf(id))
    const lasts = group === 'lasts' ? ': it holds for a while, and wears out' : ''
    return `${label} first: ${margin}. ${told.join(' ')} ${over.length} of ${count} ${over.length === 1 ? 'is' : 'are'} over${lasts}.`
  }
  return `Nothing, of ${count}: ${label.charAt(0).toLowerCase()}${label.slice(1)} has the least in hand, ${margin}.`
}
