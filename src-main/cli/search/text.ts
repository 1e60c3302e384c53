import { marginText } from '../../../shared-engine/limits/margin-words.ts'
import { worstRow } from '../../../shared-engine/limits/worst.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import type { SearchRow } from '../../../shared-engine/search/row.ts'
import { choicesText, verdictOf } from '../../../shared-engine/search/verdict.ts'
import type { SearchPlan } from '../../../shared-engine/search/space.ts'
import { limitOf } from '../../../shared-engine/limits/table.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { caution } from '../../../shared-engine/constants.ts'

const width = 80

/** What came out of a search as text for a person: the answer, what stands in the way, the rows. */
export function searchText(
  plan: SearchPlan,
  spaceName: string,
  outcome: SearchOutcome,
  stopped: boolean,
  system: UnitSystem,
): string {
  const { total } = plan
  const early = `Stopped after ${outcome.looked.toLocaleString('en')} of ${total.toLocaleString('en')} candidates.`
  const head = [oneLine(plan.stored.name, 200), ...(spaceName === '' ? [] : [oneLine(spaceName, 200)])]
  const blocks = [
    [...head, ...(stopped ? [early] : []), ...verdictOf(outcome, system)].flatMap((line) =>
      wrapped(line, width, '  '),
    ),
    busiest(outcome),
    ...frontNote(plan, outcome),
    ...outcome.rows.map((row, rank) => rowLines(plan, row, rank + 1, system)),
    wrapped(caution, width),
  ]
  const filled = blocks.filter((lines) => lines.length > 0)
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

/** What most candidates fail at, where some hold: it says what is worth changing. */
function busiest({ holds, holding, sound }: SearchOutcome): readonly string[] {
  if (holding === 0) return []
  const broken = holds
    .filter(({ breaking }) => breaking > 0)
    .sort((one, other) => other.breaking - one.breaking)
  if (broken.length === 0) return []
  const named = broken.slice(0, 4).map(({ hold, breaking }) => {
    const name = hold.type === 'margin' ? hold.limit.label : hold.measure.label
    return `${name} ${formatText(breaking / sound, 'fraction', 'metric')}`
  })
  return wrapped(`Broken most often: ${named.join('; ')}.`, width, '  ')
}

function frontNote(
  { aims }: SearchPlan,
  { frontCount, rows, runnersUp }: SearchOutcome,
): readonly (readonly string[])[] {
  if (aims.length < 2 || frontCount === 0) return []
  const spread = rows.length < frontCount ? `; ${rows.length} of them follow, spread over it` : ''
  const shown = runnersUp > 0 ? `; after them the next best in the first aim` : spread
  return [
    wrapped(
      `${frontCount} on the front, where neither aim gains without the other's loss${shown}.`,
      width,
      '  ',
    ),
  ]
}

/** The label of the limit with the worst margin. */
function worstLabel(row: SearchRow): string {
  const worst = worstRow(row.limits)
  return worst === undefined ? '' : (limitOf(worst.id)?.label ?? '')
}

/** `  1. Tooth shear 2.54 MPa; top speed 41.4 km/h; worst margin 0.6 % (Gear tooth bending, stage 1)` and its entries. */
function rowLines(plan: SearchPlan, row: SearchRow, rank: number, system: UnitSystem): readonly string[] {
  const aims = plan.aims.map(
    ({ measure }, at) => `${measure.label} ${formatText(row.aims[at] ?? null, measure.kind, system)}`,
  )
  const speed = plan.aims.some(({ measure }) => measure.name === 'topSpeedMps')
    ? []
    : [`top speed ${formatText(row.figures.topSpeedMps, 'speed', system)}`]
  const worst = worstLabel(row)
  const isAim = plan.aims.some(({ measure }) => measure.name === 'worstMargin')
  const margin = isAim ? `(${worst})` : `worst margin ${marginText(row.margin)} (${worst})`
  const number = `${String(rank).padStart(3)}. `
  const indent = ' '.repeat(number.length)
  const { count, choices } = row.alternatives
  const others =
    count === 0
      ? []
      : [`${count} more with the same ratio and figures: ${choices.slice(0, 3).map(choicesText).join(' | ')}`]
  return [
    ...wrapped([...aims, ...speed, margin].join('; '), width, indent, number),
    ...[choicesText(row.choices), ...others].flatMap((line) => wrapped(line, width, `${indent}  `, indent)),
  ]
}
