import { readJsonFile, readJsonText, soundGroupOf, wrongFormatOf } from '../entries/json-file.ts'
import { isJsonGroup, type JsonGroup } from '../entries/json-group.ts'
import { pattern as patternRows } from '../entries/parts/pattern.ts'
import { patternPartOf } from '../machine/pattern.ts'
import { failed, succeeded, mistakeAt, type Mistake, type Result } from '../mistakes/mistake.ts'
import type { Pattern } from './drive.ts'

export const patternFormat = 'pitchline-pattern'
/** Version 1 had rows of throttle or speed and grade alone; they mean the same. */
export const patternVersion = 2

/** Most rows, and the longest drive, s: a week. */
const mostRows = 2000
const longestDrive = 604_800

/** Entries of a row, as a build's own pattern has them. */
export const rowEntries = patternRows.entries.rows.item.entries

export type RowKey = keyof typeof rowEntries

export const rowKeys = Object.keys(rowEntries) as readonly RowKey[]

/** Ways to ask for something: one in each row. */
export const askKeys = ['throttlePercent', 'speedKmh', 'speedPercent', 'brakePercent'] as const

/** Units of the entries in a file, by kind. */
const unitOf: Readonly<Record<(typeof rowEntries)[RowKey]['kind'], string>> = {
  time: 's',
  fraction: '%',
  roadSpeed: 'km/h',
  mass: 'kg',
  force: 'N',
}

/** What a row may hold under a key, in words. */
function allowedFor(key: RowKey): string {
  const { low, high, kind } = rowEntries[key]
  const downhill = key === 'gradePercent' ? ', negative downhill' : ''
  return `${low} to ${high} ${unitOf[kind]}${downhill}`.replace(' %', '%')
}

/** A drive pattern from a file's bytes, or every mistake in it at once. */
export function readPattern(bytes: Uint8Array): Result<Pattern> {
  return readJsonFile(bytes, patternReader)
}

/** The same for a text. */
export function readPatternText(text: string): Result<Pattern> {
  return readJsonText(text, patternReader)
}

/** The same for a value that came out of JSON already. */
export function readPatternValue(value: unknown): Result<Pattern> {
  const sound = soundGroupOf(value)
  if (!sound.ok) return sound
  const { group, forbidden } = sound.value
  const other = wrongFormatOf(group, patternFormat, 'not-a-pattern')
  if (other !== null) return failed([other, ...forbidden])
  const { version, name, notes = '', rows } = group
  const mistakes: Mistake[] = [
    ...forbidden,
    ...unknownKeys('', group, ['format', 'version', 'name', 'notes', 'rows']),
    ...versionMistakes(version),
    ...textMistakes('name', name, 120),
    ...textMistakes('notes', notes, 10_000),
    ...rowsMistakes(rows),
  ]
  if (mistakes.length > 0) return failed(mistakes)
  return succeeded({
    name: name as string,
    notes: notes as string,
    rows: (rows as readonly JsonGroup[]).map(rowOf),
  })
}

const patternReader = { valueFrom: readPatternValue, empty: 'empty-file' } as const

function versionMistakes(version: unknown): Mistake[] {
  if (version === 1 || version === patternVersion) return []
  const allowed = `1 or ${patternVersion}`
  if (version === undefined) return [mistakeAt('missing', 'version', version, allowed)]
  const newer = typeof version === 'number' && version > patternVersion
  return [mistakeAt(newer ? 'newer-version' : 'not-one-of', 'version', version, allowed)]
}

function textMistakes(path: string, value: unknown, longest: number): Mistake[] {
  const allowed = `text of at most ${longest} characters`
  if (value === undefined) return [mistakeAt('missing', path, value, allowed)]
  if (typeof value !== 'string') return [mistakeAt('not-text', path, value, allowed)]
  return [...value].length <= longest ? [] : [mistakeAt('too-long', path, value, allowed)]
}

function unknownKeys(at: string, group: JsonGroup, known: readonly string[]): Mistake[] {
  return Object.keys(group)
    .filter((key) => !known.includes(key))
    .map((key) =>
      mistakeAt('unknown-pattern-key', at === '' ? key : `${at}.${key}`, group[key], known.join(', ')),
    )
}

function rowsMistakes(rows: unknown): Mistake[] {
  const allowed = `a list of 1 to ${mostRows} rows`
  if (rows === undefined) return [mistakeAt('missing', 'rows', rows, allowed)]
  if (!Array.isArray(rows)) return [mistakeAt('not-a-list', 'rows', rows, allowed)]
  if (rows.length === 0) return [mistakeAt('missing', 'rows', undefined, allowed)]
  if (rows.length > mostRows) return [mistakeAt('too-many', 'rows', rows, allowed)]
  const found = rows.flatMap((row: unknown, at) => rowMistakes(`rows.${at}`, row))
  if (found.length > 0) return found
  const total = (rows as readonly JsonGroup[]).reduce((sum, row) => sum + Number(row['seconds']), 0)
  return total <= longestDrive
    ? []
    : [mistakeAt('out-of-range', 'rows', `${total} s in all`, `at most ${longestDrive} s in all, a week`)]
}

function rowMistakes(path: string, row: unknown): Mistake[] {
  if (!isJsonGroup(row)) return [mistakeAt('not-an-object', path, row, rowKeys.join(', '))]
  const mistakes = [
    ...unknownKeys(path, row, rowKeys),
    ...rowKeys.flatMap((key) => numberMistakes(`${path}.${key}`, key, row[key])),
  ]
  const asks = askKeys.filter((key) => row[key] !== undefined)
  if (asks.length !== 1) {
    mistakes.push({
      ...mistakeAt('between-fields', path, undefined, `one of ${askKeys.join(', ')}`),
      value: asks.length === 0 ? 'a row that asks for nothing' : `a row that asks for ${asks.join(' and ')}`,
    })
  }
  return mistakes
}

function numberMistakes(path: string, key: RowKey, value: unknown): Mistake[] {
  const { low, high } = rowEntries[key]
  if (value === undefined) {
    return key === 'seconds' ? [mistakeAt('missing', path, value, allowedFor(key))] : []
  }
  if (typeof value !== 'number' || Number.isNaN(value)) {
    return [mistakeAt('not-a-number', path, value, allowedFor(key))]
  }
  return value < low || value > high ? [mistakeAt('out-of-range', path, value, allowedFor(key))] : []
}

/** What is left out means the same as in a build. */
const shares = {
  resistancePercent: rowEntries.resistancePercent.default,
  gripPercent: rowEntries.gripPercent.default,
  turnPercent: rowEntries.turnPercent.default,
} as const

type StoredRow = NonNullable<Parameters<typeof patternPartOf>[0]>['rows'][number]

function rowOf(row: JsonGroup): Pattern['rows'][number] {
  const whole = { ...shares, ...row } as unknown as StoredRow
  const [read] = patternPartOf({ rows: [whole] }).rows
  if (read === undefined) throw new Error('a row that was read is gone')
  return read
}
