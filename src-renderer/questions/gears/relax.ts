import type { UnitSystem } from '../../../shared-engine/index.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import { holdText } from '../../../shared-engine/search/verdict.ts'

/**
 * What to ask less of, where nothing holds: what no candidate holds, else what is the only thing in the way of most.
 * Empty where nothing could be built at all.
 */
export function relaxWords(outcome: SearchOutcome, system: UnitSystem): string {
  if (outcome.sound === 0) return ''
  const never = outcome.holds.filter(({ breaking }) => breaking === outcome.sound)
  if (never.length > 0) {
    const asked = never.map(({ hold }) => holdText(hold, system)).join('; ')
    return `ask less of ${asked}, or vary more: cells in series, the throttle cap, the motor.`
  }
  const alone = outcome.holds.toSorted((one, other) => other.breakingAlone - one.breakingAlone)[0]
  if (alone === undefined || alone.breakingAlone === 0) {
    return 'several demands stand against each other; give up the one that matters least, or widen the ranges.'
  }
  const count = alone.breakingAlone.toLocaleString('en')
  return `${holdText(alone.hold, system)}: it alone keeps out ${count} candidate${alone.breakingAlone === 1 ? '' : 's'}.`
}
