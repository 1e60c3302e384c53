import { withoutAssumption } from '../../shared-engine/assume/assumed.ts'
import { withEntry } from '../../shared-engine/entries/edit.ts'
import { fieldOf, type Field } from '../../shared-engine/entries/fields.ts'
import type { EntryOrigin, StoredBuild, Tolerance } from '../../shared-engine/entries/schema.ts'
import { standingAsideFor } from '../../shared-engine/measure/instead.ts'
import { rounded } from '../../shared-engine/measure/shown.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Session } from '../state/session.svelte.ts'
import type { Workspace } from '../state/workspace.svelte.ts'
import { troubleOf, type StoredTolerance, type TypedEntry } from './entry-text.ts'
import { partName } from './forms.ts'
import { partOfPath } from './part-of-path.ts'

/** What undo calls a change: "change Motor: Speed constant Kv". */
export function changeName(path: string, label: string): string {
  return `change ${partName(partOfPath(path))}: ${label}`
}

export function toleranceAt(stored: StoredBuild, path: string): Tolerance | undefined {
  const all: Readonly<Record<string, Tolerance>> = stored.tolerances ?? {}
  return all[path]
}

export function originAt(stored: StoredBuild, path: string): EntryOrigin | undefined {
  const all: Readonly<Record<string, EntryOrigin>> = stored.origins ?? {}
  return all[path]
}

/** Takes a number with its tolerance into the build, or empties the entry; answers with what stands against it. */
export function setNumber(
  session: Session,
  path: string,
  field: Field,
  entry: TypedEntry | null,
  group: string | null,
): string {
  const { stored } = session
  const next = entry === null ? withEntry(stored, path, undefined) : withNumber(stored, path, entry)
  return troubleOf(session.change(changeName(path, field.label), next, group))
}

function withNumber(stored: StoredBuild, path: string, { value, tolerance }: TypedEntry): StoredBuild {
  const changed = withEntry(withoutAssumption(stored, path), path, value)
  return withTolerance(changed, path, tolerance)
}

function withTolerance(stored: StoredBuild, path: string, tolerance: StoredTolerance | null): StoredBuild {
  if (tolerance === null && toleranceAt(stored, path) === undefined) return stored
  return withEntry(stored, `tolerances.${path}`, tolerance ?? undefined)
}

export function setOrigin(session: Session, path: string, label: string, word: string): void {
  const origin = (['measured', 'stated', 'guessed'] as const).find((one) => one === word)
  session.change(`say where ${label} comes from`, withEntry(session.stored, `origins.${path}`, origin))
}

/** A number with its uncertainty, and how it is known. */
interface Measured {
  readonly path: string
  readonly value: number | null
  readonly plusMinus: number | null
  readonly origin: EntryOrigin
  /** "a measurement", "a log". */
  readonly from: string
}

/**
 * Puts a measured number into the build with its tolerance and origin, as one step to undo.
 *
 * @returns what stands against it, in sentences; empty where it was taken
 */
export function takeMeasured(
  { session, notices }: Pick<Workspace, 'session' | 'notices'>,
  { path, value, plusMinus, origin, from }: Measured,
): string {
  if (value === null || plusMinus === null) return 'There is no value to take.'
  const field = fieldOf(path)
  const label = field?.label ?? path
  const text = rounded(value, plusMinus)
  const number = Number(text.value.replace('−', '-'))
  const tolerance = plusMinus > 0 ? { plusMinus: Number(text.plusMinus), shape: 'normal' } : undefined
  const entered = withEntry(session.stored, path, field?.whole === true ? Math.round(number) : number)
  const spread = withEntry(entered, `tolerances.${path}`, tolerance)
  // What was only a guess for the measured entry's sake goes, with its tolerance and origin.
  const known = standingAsideFor(path).reduce(
    (stored, aside) =>
      ['', 'tolerances.', 'origins.'].reduce((one, at) => withEntry(one, at + aside, undefined), stored),
    withEntry(spread, `origins.${path}`, origin),
  )
  const mistakes = session.change(`take ${label} from ${from}`, known)
  if (mistakes.length > 0) return mistakes.map(sentenceOf).join(' ')
  notices.done(`${label} taken: ${text.value}${tolerance === undefined ? '' : ` ± ${text.plusMinus}`}`)
  return ''
}
