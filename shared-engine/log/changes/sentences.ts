import { formatText } from '../../units/display.ts'
import type { QuantityKind, UnitSystem } from '../../units/kinds.ts'
import { changeWords, conditionWords } from './quantity.ts'
import type { Against, Change, Changes, ChangesNote, NotCompared } from './result.ts'

/** A change as words for a row of a table. */
interface ChangeRow {
  readonly label: string
  readonly before: string
  readonly after: string
  /** Signed, with the half of its interval. */
  readonly difference: string
  /** Whether it is told from nothing. */
  readonly verdict: string
  readonly scatter: string
}

/** What the two columns are called. */
export function sideNames(against: Against): readonly [before: string, after: string] {
  return against === 'log' ? ['Before', 'After'] : ['The build', 'This run']
}

const differenceKind = (kind: QuantityKind): QuantityKind =>
  kind === 'temperature' ? 'temperatureDifference' : kind

/** A change as the cells of a row. */
export function changeRow(change: Change, system: UnitSystem): ChangeRow {
  const { label, kind } = changeWords(change.id)
  const shown = (value: number) => formatText(value, kind, system)
  const apart = (value: number) => formatText(Math.abs(value), differenceKind(kind), system)
  const sign = change.difference < 0 ? '\u2212' : '+'
  // A stretch has volts, but no resistance of its own.
  const scattered = (value: number) =>
    formatText(value, change.id === 'pack-ohms' ? 'volts' : differenceKind(kind), system)
  const scatter = change.scatter.flatMap((one) => (one === null ? [] : [scattered(one)]))
  return {
    label,
    before: shown(change.before),
    after: shown(change.after),
    difference: `${sign}${apart(change.difference)} ± ${apart(change.within)}`,
    verdict: change.told ? (change.difference > 0 ? 'more' : 'less') : 'not told from nothing',
    scatter: scatter.join(' and '),
  }
}

/** A change in one sentence: what it was, what it is, how sure, and how much single stretches scatter. */
export function changeSentence(change: Change, against: Against, system: UnitSystem): string {
  const row = changeRow(change, system)
  const [before, after] = against === 'log' ? ['before', 'after'] : ['by the build', 'on this run']
  const share = Math.round((100 * Math.abs(change.difference)) / Math.abs(change.before))
  const size = change.difference > 0 ? 'more' : 'less'
  const [least] = row.difference.slice(1).split(' ± ')
  const by = `${least ?? ''} ${size}${Number.isFinite(share) ? ` (${share}\u202F%)` : ''}`
  const verdict = change.told
    ? `${by}, ± ${row.difference.split(' ± ')[1] ?? ''} in 95 of 100`
    : `no difference that is told from nothing (${row.difference} in 95 of 100)`
  const scatter = row.scatter === '' ? '' : `; single stretches scatter by ${row.scatter}`
  return `${row.label}: ${row.before} ${before}, ${row.after} ${after}: ${verdict}${scatter}.`
}

/** Under which conditions, and of how many stretches: a change's small print. */
export function conditionsTold(
  { conditions, stretches, stretchSeconds }: Change,
  system: UnitSystem,
): string {
  const told = conditions.map(({ measure, from, to }) => {
    const { label, kind } = conditionWords[measure] ?? { label: measure, kind: 'none' as const }
    return `${label} ${formatText(from, kind, system)} to ${formatText(to, kind, system)}`
  })
  const [before, after] = stretches
  const counted = before === 0 ? String(after) : `${before} and ${after}`
  return `${told.join(', ')}; ${counted} stretches of ${stretchSeconds}\u202Fs`
}

/** Why something that both runs have cannot be compared. */
export function notComparedSentence({ id, condition, reaches }: NotCompared, system: UnitSystem): string {
  const { label } = changeWords(id)
  if (condition === null || reaches === null)
    return `${label}: not compared. The runs have too little under like conditions: drive both at the same speeds for some minutes, begun as warm and as full.`
  const { label: what, kind } = conditionWords[condition] ?? { label: condition, kind: 'none' as const }
  const shown = (value: number) => formatText(value, kind, system)
  const [before, after] = reaches.map(({ from, to }) => `${shown(from)} to ${shown(to)}`)
  return `${label}: not compared. The runs do not overlap in ${what}: ${before ?? ''} before, ${after ?? ''} after.`
}

const notes: Readonly<Record<ChangesNote, string>> = {
  'other-days':
    'Two runs differ by the ground, the wind and the driver too: what is told here is that they differ, not why. Change one thing, drive the same way, and drive back and forth between the two.',
  'on-the-level':
    'The build is worked out for level ground at a steady speed: hills make a run draw more on the whole.',
  'speed-by-rpm':
    'Speeds are by the rpm: a track that slips more than its build says looks faster than it is.',
  'no-temperature':
    'A motor temperature is not in the log: what a warm motor does is not taken into account.',
  'no-charge': 'The charge is not known: what the falling volts do is not taken into account.',
  'charge-assumed': 'A log does not begin at rest: its charge at the start is the entry of its build.',
  'amps-by-sag': 'A current was not logged: that of a motor is worked out from the sag of the volts.',
}

/** What has to be said beside a comparison, in sentences. */
export function changesNotes(changes: Changes): readonly string[] {
  return changes.notes.map((note) => notes[note])
}

/** The whole of a comparison in one sentence. */
export function changesAnswer({ against, changes, notCompared }: Changes): string {
  const told = changes.filter((one) => one.told).length
  if (changes.length === 0)
    return notCompared.length === 0
      ? 'Nothing can be compared: the logs have no quantity in common beside the rpm.'
      : 'Nothing can be compared under like conditions.'
  const which = against === 'log' ? 'between the two runs' : 'between this run and its build'
  if (told === 0) return `No difference ${which} is told from nothing, of ${changes.length} looked at.`
  return `${told} of ${changes.length} quantities differ ${which} by more than chance.`
}
