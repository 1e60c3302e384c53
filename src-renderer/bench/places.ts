import type { Instrument } from '../../shared-engine/measure/readings.ts'
import { typedNumber } from '../../shared-engine/measure/typed.ts'
import { typedReading, typedReadings, typedSpread } from '../../shared-engine/measure/typed-readings.ts'
import { failed, succeeded, type Result } from '../../shared-engine/mistakes/mistake.ts'
import type { Given, KeptReadings } from './kept.ts'

/**
 * Where a reading or what goes with it is typed: `rows.3.rpm`, `lists.pullKg`, `given.spanMm`, `spread.spanMm` (how far that
 * may be off), `instruments.resolution.pullKg`.
 */
export type Place = string

type Found =
  | { readonly part: 'rows'; readonly row: number; readonly name: string }
  | { readonly part: 'lists' | 'given' | 'spread'; readonly name: string }
  | { readonly part: 'instruments'; readonly of: keyof Instrument; readonly name: string }

function found(place: Place): Found {
  const [part = '', first = '', ...rest] = place.split('.')
  if (part === 'rows') return { part, row: Number(first), name: rest.join('.') }
  if (part === 'instruments') return { part, of: first as keyof Instrument, name: rest.join('.') }
  return { part: part as 'lists', name: [first, ...rest].join('.') }
}

/** The name of what a place is about: a reading's, or that of a number given beside readings. */
export function nameAt(place: Place): string {
  return found(place).name
}

/** Readings without one row of their table, and what was typed in others where these now stand. */
export function withoutRow(kept: KeptReadings, row: number): KeptReadings {
  const written = Object.entries(kept.written).flatMap(([place, text]) => {
    const now = placeWithout(place, row)
    return now === null ? [] : [[now, text] as const]
  })
  return {
    ...kept,
    rows: kept.rows.filter((_, at) => at !== row),
    written: Object.fromEntries(written),
  }
}

/** The same place after a row was taken out above it; null where it was in that row. */
export function placeWithout(place: Place, row: number): Place | null {
  const at = found(place)
  if (at.part !== 'rows' || at.row < row) return place
  return at.row === row ? null : `rows.${at.row - 1}.${at.name}`
}

/** The number or text that readings hold at a place, as a person would type it; empty where there is none. */
export function bareText(kept: KeptReadings, place: Place): string {
  const at = found(place)
  switch (at.part) {
    case 'rows':
      return textOf(kept.rows[at.row]?.[at.name])
    case 'lists':
      return (kept.lists[at.name] ?? []).map(String).join('  ')
    case 'instruments':
      return textOf(kept.instruments[at.name]?.[at.of])
    case 'given':
    case 'spread':
      return givenText(kept.given[at.name], at.part)
  }
}

const textOf = (value: string | number | undefined) => (value === undefined ? '' : String(value))

function givenText(given: Given | undefined, part: 'given' | 'spread'): string {
  if (typeof given !== 'object') return part === 'given' ? textOf(given) : ''
  if (part === 'given') return String(given.value)
  return given.plusMinusPercent === undefined ? textOf(given.plusMinus) : `${given.plusMinusPercent}\u202F%`
}

/** What stands at a place: as it was typed where that still means what is kept, else the bare number. */
export function textAt(kept: KeptReadings, place: Place): string {
  const bare = bareText(kept, place)
  const written = kept.written[place]
  if (written === undefined) return bare
  const as = withTyped({ ...kept, written: {} }, place, written)
  return as.ok && bareText(as.value, place) === bare ? written : bare
}

/**
 * Readings with what was typed at a place; empty text takes it out.
 *
 * @returns why not, where the text means no number there
 */
export function withTyped(kept: KeptReadings, place: Place, text: string): Result<KeptReadings> {
  const put = putAt(kept, place, text)
  if (!put.ok) return put
  const written = Object.fromEntries(Object.entries(kept.written).filter(([other]) => other !== place))
  const bare = bareText(put.value, place)
  const isBare = text.trim() === '' || text.trim() === bare
  return succeeded({ ...put.value, written: isBare ? written : { ...written, [place]: text.trim() } })
}

function putAt(kept: KeptReadings, place: Place, text: string): Result<KeptReadings> {
  const at = found(place)
  const isEmpty = text.trim() === ''
  switch (at.part) {
    case 'rows': {
      const read = isEmpty ? null : typedReading(at.name, text)
      if (read?.ok === false) return read
      const rows = Array.from(
        { length: Math.max(kept.rows.length, at.row + 1) },
        (_, row) => kept.rows[row] ?? {},
      )
      rows[at.row] = withKey(rows[at.row] ?? {}, at.name, read === null ? undefined : read.value)
      return succeeded({ ...kept, rows })
    }
    case 'lists': {
      const read = typedReadings(at.name, text)
      return read.ok ? succeeded({ ...kept, lists: { ...kept.lists, [at.name]: read.value } }) : read
    }
    case 'instruments':
      return withInstrument(kept, at.name, at.of, text)
    case 'given': {
      if (isEmpty) return succeeded({ ...kept, given: withKey(kept.given, at.name, undefined) })
      const read = typedReading(at.name, text)
      if (!read.ok) return read
      const now = kept.given[at.name]
      const given = typeof now === 'object' ? { ...now, value: read.value } : read.value
      return succeeded({ ...kept, given: { ...kept.given, [at.name]: given } })
    }
    case 'spread':
      return withSpread(kept, at.name, text)
  }
}

function withSpread(kept: KeptReadings, name: string, text: string): Result<KeptReadings> {
  const now = kept.given[name]
  const value = typeof now === 'object' ? now.value : now
  if (typeof value !== 'number') return succeeded(kept)
  if (text.trim() === '') return succeeded({ ...kept, given: { ...kept.given, [name]: value } })
  const read = typedSpread(name, text)
  if (!read.ok) return read
  const shape = typeof now === 'object' && now.shape !== undefined ? { shape: now.shape } : {}
  return succeeded({ ...kept, given: { ...kept.given, [name]: { value, ...read.value, ...shape } } })
}

/** Percent and digits are plain numbers; a step and an offset are in the unit of what is read. */
function withInstrument(
  kept: KeptReadings,
  name: string,
  of: keyof Instrument,
  text: string,
): Result<KeptReadings> {
  const number = text.trim() === '' ? 0 : instrumentNumber(name, of, text)
  if (number === null)
    return failed([
      {
        code: 'entry-not-understood',
        path: '',
        value: text.trim(),
        allowed: 'a number of 0 or more',
        kept: '',
      },
    ])
  const instruments = { ...kept.instruments, [name]: { ...kept.instruments[name], [of]: number } }
  return succeeded({ ...kept, instruments })
}

function instrumentNumber(name: string, of: keyof Instrument, text: string): number | null {
  if (of === 'percent' || of === 'digits') {
    const plain = typedNumber(text.replace(/\s*%$/, ''))
    return plain !== null && plain >= 0 ? plain : null
  }
  const read = typedSpread(name, text)
  return read.ok && 'plusMinus' in read.value ? read.value.plusMinus : null
}

function withKey<T>(
  group: Readonly<Record<string, T>>,
  key: string,
  value: T | undefined,
): Readonly<Record<string, T>> {
  if (value !== undefined) return { ...group, [key]: value }
  return Object.fromEntries(Object.entries(group).filter(([one]) => one !== key))
}
