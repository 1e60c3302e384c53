import { benchUnitOf, fieldOf } from '../entries/fields.ts'
import { sentenceOf } from '../mistakes/catalogue.ts'
import { formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import type { CandidateChoice } from './candidate-build.ts'
import type { HoldReport, SearchOutcome } from './outcome.ts'
import type { Hold } from './space-hold.ts'

const whole = (count: number) => count.toLocaleString('en')
const margin = (value: number | null) => formatText(value, 'fraction', 'metric')

/** What has to be held, in words: "Tooth shear with 20 % in hand", "Top speed of at least 40 km/h". */
export function holdText(hold: Hold, system: UnitSystem): string {
  switch (hold.type) {
    case 'margin':
      if (hold.limit.id === 'vehicle.start' && hold.least <= Number.MIN_VALUE) return 'getting going at all'
      return hold.least === 0
        ? `${hold.limit.label} not over`
        : `${hold.limit.label} with ${margin(hold.least)} in hand`
    case 'atLeast':
    case 'atMost': {
      const bound = formatText(hold.bound, hold.measure.kind, system)
      return `${hold.measure.label} of at ${hold.type === 'atLeast' ? 'least' : 'most'} ${bound}`
    }
    case 'exists':
      return `${hold.measure.label}, which is aimed for, can be told`
  }
}

/** The best that any candidate comes to. */
function bestText({ hold, best }: HoldReport, system: UnitSystem): string {
  if (best === null) return 'it exists for none of them'
  if (hold.type === 'margin')
    return best < 0 ? `the best is ${margin(-best)} over` : `the best has ${margin(best)} in hand`
  return `the best comes to ${formatText(best, hold.type === 'exists' ? 'none' : hold.measure.kind, system)}`
}

/** What a varied entry stands at: "16", "60 %", the name of a motor. */
export function choiceText({ path, value, motor }: CandidateChoice): string {
  if (motor !== null) return motor.name
  const field = fieldOf(path)
  // What is counted is in the entry's name: teeth, cells.
  const unit = field === undefined || field.counted !== undefined ? '' : benchUnitOf(field)
  return unit === '' ? String(value) : `${value}\u202F${unit}`
}

/** A candidate's entries in a line: "Driver’s teeth, stage 1: 16; Motor: fast wind". */
export function choicesText(choices: readonly CandidateChoice[]): string {
  return choices.map((choice) => `${choice.label}: ${choiceText(choice)}`).join('; ')
}

/**
 * What came out of a search, in sentences: how many hold; where none does, what keeps them from it and by how much at
 * best; which candidates could not be built at all.
 */
export function verdictOf(outcome: SearchOutcome, system: UnitSystem): string[] {
  return [...answerOf(outcome, system), ...unsoundText(outcome)]
}

function answerOf(outcome: SearchOutcome, system: UnitSystem): string[] {
  const { sound, holding, looked } = outcome
  if (looked === 0) return ['No candidate was looked at.']
  const none = looked === 1 ? 'The only candidate' : `None of ${whole(looked)} candidates`
  if (sound === 0) return [`${none} ${looked === 1 ? 'cannot' : 'can'} be built.`]
  if (holding === 0)
    return [
      `${none} ${looked === 1 ? 'does not hold' : 'holds'} everything asked for.`,
      ...whyNot(outcome, system),
    ]
  const some = looked === 1 ? 'The only candidate' : `${whole(holding)} of ${whole(looked)} candidates`
  return [`${some} ${holding === 1 ? 'holds' : 'hold'} everything asked for.`]
}

function whyNot(outcome: SearchOutcome, system: UnitSystem): string[] {
  const impossible = outcome.holds.filter(({ breaking }) => breaking === outcome.sound)
  const alone = impossible.map(
    (report) => `No candidate holds: ${holdText(report.hold, system)}; ${bestText(report, system)}.`,
  )
  const pairs = outcome.neverTogether.map(
    ([one, other]) => `Held singly, never together: ${holdText(one, system)}; ${holdText(other, system)}.`,
  )
  const why = impossible.length > 0 ? alone : pairs
  const together = 'Each can be held, and each two of them; not all together.'
  const closest = outcome.closest === null ? [] : [`Closest: ${choicesText(outcome.closest.choices)}.`]
  return [...(why.length > 0 ? why : [together]), ...closest]
}

function unsoundText({ unsound }: SearchOutcome): string[] {
  return unsound.map(
    ({ mistake, count }) => `${whole(count)} cannot be built; the first: ${sentenceOf(mistake)}`,
  )
}
