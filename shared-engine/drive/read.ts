import { readJsonFile, readJsonText, soundGroupOf, wrongFormatOf } from '../entries/json-file.ts'
import { isJsonGroup, type JsonGroup } from '../entries/json-group.ts'
import { failed, succeeded, mistakeAt, type Mistake, type Result } from '../mistakes/mistake.ts'
import { toEngine } from '../units/convert.ts'
import type { Pattern, PatternRow } from './drive.ts'

export const patternFormat = 'pitchline-pattern'
export const patternVersion = 1

/** Most rows, and the longest drive, s: a week. */
const mostRows = 2000
const longestDrive = 604_800

interface Range {
  readonly low: number
  readonly high: number
  readonly unit: string
}

const ranges: Readonly<Record<string, Range>> = {
  seconds: { low: 0.01, high: 86_400, unit: 's' },
  throttlePercent: { low: 0, high: 100, unit: '%' },
  speedKmh: { low: 0, high: 200, unit: 'km/h' },
  gradePercent: { low: -100, high: 100, unit: '%, negative downhill' },
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
  const settled = (rows as readonly JsonGroup[]).map(rowOf)
  return succeeded({ name: name as string, notes: notes as string, rows: settled })
}

const patternReader = { valueFrom: readPatternValue, empty: 'empty-file' } as const

function versionMistakes(version: unknown): Mistake[] {
  if (version === patternVersion) return []
  if (version === undefined) return [mistakeAt('missing', 'version', version, `${patternVersion}`)]
  const newer = typeof version === 'number' && version > patternVersion
  return [mistakeAt(newer ? 'newer-version' : 'not-one-of', 'version', version, `${patternVersion}`)]
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
  if (!isJsonGroup(row))
    return [mistakeAt('not-an-object', path, row, 'seconds, throttlePercent or speedKmh, gradePercent')]
  const mistakes = unknownKeys(path, row, Object.keys(ranges))
  for (const [key, { low, high, unit }] of Object.entries(ranges)) {
    const value = row[key]
    const allowed = `${low} to ${high} ${unit}`.replace(' %', '%')
    if (value === undefined) {
      if (key === 'seconds') mistakes.push(mistakeAt('missing', `${path}.${key}`, value, allowed))
    } else if (typeof value !== 'number' || Number.isNaN(value)) {
      mistakes.push(mistakeAt('not-a-number', `${path}.${key}`, value, allowed))
    } else if (value < low || value > high) {
      mistakes.push(mistakeAt('out-of-range', `${path}.${key}`, value, allowed))
    }
  }
  const asks = ['throttlePercent', 'speedKmh'].filter((key) => row[key] !== undefined)
  if (asks.length !== 1) {
    const found = asks.length === 0 ? 'a row that asks for nothing' : 'a row that asks for both'
    mistakes.push({
      ...mistakeAt('between-fields', path, undefined, 'either throttlePercent or speedKmh'),
      value: found,
    })
  }
  return mistakes
}

function rowOf(row: JsonGroup): PatternRow {
  const { seconds, throttlePercent, speedKmh, gradePercent } = row
  return {
    seconds: Number(seconds),
    ask:
      throttlePercent === undefined
        ? { speed: toEngine(Number(speedKmh), 'speed', 'km/h') }
        : { throttle: toEngine(Number(throttlePercent), 'fraction') },
    grade: gradePercent === undefined ? null : toEngine(Number(gradePercent), 'fraction'),
  }
}
