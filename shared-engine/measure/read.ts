import { readJsonFile, soundGroupOf } from '../entries/json-file.ts'
import { isJsonGroup, type JsonGroup } from '../entries/json-group.ts'
import { valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import { guideOf, isTestId, type Guide, type TestId } from '../reference/measurements.ts'
import type { z } from '../reference/zod.ts'
import { readingMistake } from './mistake.ts'
import { missingOf } from './missing.ts'
import { choicesOf, givenNames, readingsSchemaOf } from './readings-schema.ts'
import {
  standardUncertaintyOf,
  type GivenNumber,
  type GivenTolerance,
  type Instrument,
  type Readings,
} from './readings.ts'

/**
 * Readings of a test from a file's bytes, or every mistake in them at once.
 *
 * @param bytes UTF-8, up to 1 MiB
 * @param build that has what the readings do not give; what neither has is a mistake too
 */
export function readReadings(test: TestId, bytes: Uint8Array, build: Build | null): Result<Readings> {
  return readJsonFile(bytes, {
    valueFrom: (value) => readReadingsValue(test, value, build),
    empty: 'empty-file',
    twice: (path) => readingMistake(path, 'one of it, not two', undefined),
  })
}

/** Readings of a test from what stands in their file, or every mistake in them at once. */
export function readReadingsValue(test: TestId, value: unknown, build: Build | null): Result<Readings> {
  const sound = soundGroupOf(value, (found) => readingMistake('', 'keys and values in braces', found))
  if (!sound.ok) return sound
  const { group, forbidden } = sound.value
  if (forbidden.length > 0) return failed(forbidden)
  const other = group['test']
  if (typeof other === 'string' && other !== test && isTestId(other))
    return failed([readingMistake('test', `"${test}", the test that was asked for`, other)])
  const guide = guideOf(test)
  const read = readingsSchemaOf(test, guide, group).safeParse(group)
  const mistakes = [
    ...(read.error?.issues.flatMap((issue) => mistakesOf(issue, group, guide)) ?? []),
    ...missingOf(guide, standingOf(group), build),
  ]
  return mistakes.length > 0 ? failed(mistakes) : succeeded(settled(test, guide, group))
}

/** Names that stand in a value, sound or not. */
function standingOf(value: JsonGroup) {
  const keys = (group: unknown) => (isJsonGroup(group) ? Object.keys(group) : [])
  const rows: unknown = value['rows']
  const columns = Array.isArray(rows) ? rows.flatMap(keys) : []
  return { given: new Set(keys(value['given'])), read: new Set([...columns, ...keys(value['lists'])]) }
}

/** Keys of a path as they stand; entry paths under `given` are one key. */
const joined = (keys: readonly PropertyKey[]) => keys.map(String).join('.')

function mistakesOf(issue: z.core.$ZodIssue, value: unknown, guide: Guide): Mistake[] {
  const path = issue.path
  if (issue.code !== 'unrecognized_keys')
    return [readingMistake(joined(path), issue.message, valueAt(value, path.map(String)))]
  const allowed = knownKeys(path, guide)
  return issue.keys.map((key) =>
    readingMistake(joined([...path, key]), allowed, valueAt(value, [...path, key].map(String))),
  )
}

/** What may stand in a group, for a key that may not. */
function knownKeys(path: readonly PropertyKey[], guide: Guide): string {
  const columns = [...guide.rows, ...guide.optionalColumns]
  const lists = [...guide.lists, ...guide.optionalLists]
  if (path.length === 0) return 'format, version, test, name, notes, rows, lists, instruments, given'
  const [group] = path
  const names =
    group === 'rows'
      ? columns
      : group === 'lists'
        ? lists
        : path.length > 1
          ? group === 'given'
            ? ['value', 'plusMinus', 'plusMinusPercent', 'shape']
            : ['percent', 'digits', 'resolution', 'plusMinus']
          : group === 'given'
            ? givenNames(guide)
            : [...columns, ...lists]
  return names.length === 0 ? 'nothing' : `only ${names.join(', ')}`
}

/** Readings that the schema has let through. */
function settled(test: TestId, guide: Guide, value: JsonGroup): Readings {
  const rows = (value['rows'] ?? []) as readonly Readonly<Record<string, number>>[]
  const names = Object.keys(rows[0] ?? Object.fromEntries(guide.rows.map((name) => [name, 0])))
  const given = Object.entries((value['given'] ?? {}) as Readonly<Record<string, unknown>>)
  return {
    test,
    name: typeof value['name'] === 'string' ? value['name'] : '',
    notes: typeof value['notes'] === 'string' ? value['notes'] : '',
    columns: new Map(
      guide.rows.length === 0 ? [] : names.map((name) => [name, rows.map((row) => row[name] ?? NaN)]),
    ),
    lists: new Map(Object.entries((value['lists'] ?? {}) as Readonly<Record<string, readonly number[]>>)),
    instruments: new Map(
      Object.entries((value['instruments'] ?? {}) as Readonly<Record<string, Partial<Instrument>>>).map(
        ([name, part]) => [name, { percent: 0, digits: 0, resolution: 0, plusMinus: 0, ...part }],
      ),
    ),
    given: new Map(
      given.flatMap(([name, entry]) =>
        choicesOf(guide, name) === null ? [[name, givenNumber(entry)] as const] : [],
      ),
    ),
    words: new Map(
      given.flatMap(([name, entry]) =>
        choicesOf(guide, name) === null ? [] : [[name, String(entry)] as const],
      ),
    ),
  }
}

function givenNumber(entry: unknown): GivenNumber {
  if (typeof entry === 'number') return { value: entry, standardUncertainty: 0 }
  const { value, ...tolerance } = entry as GivenTolerance & { readonly value: number }
  return { value, standardUncertainty: standardUncertaintyOf(value, tolerance) }
}
