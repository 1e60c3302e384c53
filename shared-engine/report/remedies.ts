import { shownEntry } from '../entries/entry-reader.ts'
import { marginText } from '../limits/margin-words.ts'
import { limitOf } from '../limits/table.ts'
import type { Remedies, Remedy } from '../remedy/remedy.ts'
import { list, text, type Block } from './block.ts'

/** Changes named on the sheet; the window and `pitchline remedy` have all. */
const mostNamed = 4

const shown = (path: string, value: number | string | null) =>
  value === null ? 'none' : typeof value === 'number' ? shownEntry(path, value) : value

const named = (ids: Remedy['newlyOver']) => ids.map((id) => limitOf(id)?.label ?? id).join(', ')

function changeText({ path, label, from, to, margin, newlyOver }: Remedy): string {
  const price = newlyOver.length === 0 ? '' : `; then over: ${named(newlyOver)}`
  return `${label}: ${shown(path, from)} to ${shown(path, to)}, margin ${marginText(margin)}${price}`
}

/** What would bring the worst limit to 20 % in hand: the least changes of one entry, or the best that one can do. */
export function remedyBlocks({ limit, holds, remedies }: Remedies): readonly Block[] {
  if (limit === null) return []
  const label = limitOf(limit)?.label ?? limit
  if (holds) return [text(`${label}, the worst, has its 20 % in hand: nothing to change.`)]
  const enough = remedies.filter(({ reached }) => reached)
  const offered = enough.length > 0 ? enough : remedies
  if (offered.length === 0) return [text(`No single entry that a builder controls moves ${label}.`)]
  const head =
    enough.length > 0
      ? `${label}: each of these alone brings 20 % in hand.`
      : `${label}: no entry alone brings 20 % in hand; the best that they can do:`
  return [text(head), list(offered.slice(0, mostNamed).map(changeText))]
}
