import { entriesBehind, type Checked, type UnitSystem } from '../../../shared-engine/index.ts'
import { entryLabelOf } from '../../../shared-engine/compare/compare.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import type { Hold } from '../../../shared-engine/search/space-hold.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import { holdText } from '../../../shared-engine/search/verdict.ts'

/** What a search can vary beside the teeth, in the words of its form. */
const levers: Readonly<Record<string, string>> = {
  'pack.series': 'cells in series',
  'controller.throttleCapPercent': 'the throttle cap',
  'motor.kvRpmPerVolt': 'the motor',
}

/** Entries named at most. */
const most = 3

/**
 * What to ask less of, where nothing holds: what no candidate holds, else what is the only thing in the way of most; then
 * what is not varied yet, and what no search varies, where the limit depends on it. Empty where nothing could be built.
 *
 * @param varied paths of the entries that were varied; "motor" where motors were
 * @param checked the build that the search began from
 */
export function relaxWords(
  outcome: SearchOutcome,
  varied: readonly string[],
  checked: Checked,
  system: UnitSystem,
): string {
  if (outcome.sound === 0) return ''
  const never = outcome.holds.filter(({ breaking }) => breaking === outcome.sound).map(({ hold }) => hold)
  if (never.length > 0) {
    const asked = never.map((hold) => holdText(hold, system)).join('; ')
    return `ask less of ${[asked, ...leftToTry(never, varied, checked)].join(', or ')}.`
  }
  const alone = outcome.holds.toSorted((one, other) => other.breakingAlone - one.breakingAlone)[0]
  if (alone === undefined || alone.breakingAlone === 0) {
    return 'several demands stand against each other; give up the one that matters least, or widen the ranges.'
  }
  const count = alone.breakingAlone.toLocaleString('en')
  return `${holdText(alone.hold, system)}: it alone keeps out ${count} candidate${alone.breakingAlone === 1 ? '' : 's'}.`
}

/** "vary the motor too", "change what no search varies: Driven wheel’s material (Reduction 1)". */
function leftToTry(holds: readonly Hold[], varied: readonly string[], checked: Checked): string[] {
  const has = (path: string) => varied.some((one) => path === one || path.startsWith(`${one}.`))
  const behind = new Set(
    holds.flatMap((hold) => (hold.type === 'margin' ? entriesBehind(checked, hold.limit.id) : [])),
  )
  const bounds = holds.some((hold) => hold.type !== 'margin')
  const more = Object.entries(levers).flatMap(([path, words]) =>
    !has(path) && (bounds || behind.has(path)) ? [words] : [],
  )
  const chosen = [...behind].filter((path) => fieldOf(path)?.choices !== undefined && !has(path))
  const labels = chosen.slice(0, most).map(entryLabelOf)
  return [
    ...(more.length > 0 ? [`vary ${more.join(', ')} too`] : []),
    ...(labels.length > 0 ? [`change what no search varies: ${labels.join('; ')}`] : []),
  ]
}
