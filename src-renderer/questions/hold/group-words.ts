import type { LimitRow } from '../../../shared-engine/index.ts'
import type { LimitGroup } from '../../../shared-engine/limits/group.ts'
import { marginWords } from '../../../shared-engine/limits/margin-words.ts'
import { limitOf } from '../../../shared-engine/index.ts'

/** How a group stands, in one sentence: the worst by name, and how many are over or near. */
export function groupSentence(group: LimitGroup, rows: readonly LimitRow[]): string {
  const [worst] = rows
  if (worst === undefined) return ''
  const over = rows.filter(({ standing }) => standing === 'over').length
  const label = limitOf(worst.id)?.label ?? worst.id
  const margin = marginWords(worst.margin, limitOf(worst.id)?.sense)
  const count = `${rows.length} ${rows.length === 1 ? 'check' : 'checks'}`
  if (over > 0)
    return `${label} first: ${margin}. ${over} of ${count} ${over === 1 ? 'is' : 'are'} over${group === 'lasts' ? ': it holds for a while, and wears out' : ''}.`
  return `Nothing, of ${count}: ${label.charAt(0).toLowerCase()}${label.slice(1)} has the least in hand, ${margin}.`
}
