import { withEntry, type StoredBuild } from '../../shared-engine/index.ts'
import { isJsonGroup, type JsonGroup } from '../../shared-engine/entries/json-group.ts'
import type { Instrument } from '../../shared-engine/measure/readings.ts'
import type { Guide, TestId } from '../../shared-engine/reference/measurements.ts'
import { bareText } from './places.ts'

/** A number given beside readings: bare, or with how far it may be off. */
export type Given = string | number | GivenSpread

interface GivenSpread {
  readonly value: number
  readonly plusMinus?: number
  readonly plusMinusPercent?: number
  readonly shape?: string
}

/** Readings of one test as the build keeps them: what was typed and reads as a number, whole or not. */
export interface KeptReadings {
  readonly rows: readonly Readonly<Record<string, number>>[]
  readonly lists: Readonly<Record<string, readonly number[]>>
  readonly instruments: Readonly<Record<string, Partial<Instrument>>>
  readonly given: Readonly<Record<string, Given>>
  /** As it was typed, where that is not the bare number, by its place: `rows.3.pullKg` is `18 lb`. */
  readonly written: Readonly<Record<string, string>>
  /** What no form of ours writes: a name, notes. */
  readonly rest: JsonGroup
}

/** Nothing read yet. */
export const noReadings: KeptReadings = {
  rows: [],
  lists: {},
  instruments: {},
  given: {},
  written: {},
  rest: {},
}

const groupOf = (value: unknown): JsonGroup => (isJsonGroup(value) ? value : {})

function entriesOf<T>(value: unknown, is: (one: unknown) => one is T): Record<string, T> {
  return Object.fromEntries(
    Object.entries(groupOf(value)).filter((entry): entry is [string, T] => is(entry[1])),
  )
}

const isNumber = (value: unknown): value is number => typeof value === 'number'
const isText = (value: unknown): value is string => typeof value === 'string'
const numbersOf = (value: unknown) => entriesOf(value, isNumber)

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as unknown[]) : [])

function givenOf(value: unknown): Given | null {
  if (typeof value === 'number' || typeof value === 'string') return value
  const { value: number, plusMinus, plusMinusPercent } = numbersOf(value)
  if (number === undefined) return null
  const { shape } = groupOf(value)
  return {
    value: number,
    ...(plusMinus === undefined ? {} : { plusMinus }),
    ...(plusMinusPercent === undefined ? {} : { plusMinusPercent }),
    ...(isText(shape) ? { shape } : {}),
  }
}

/** Keys of a test's readings in a build that the form writes or that are its file's own. */
const formKeys: ReadonlySet<string> = new Set([
  ...['rows', 'lists', 'instruments', 'given', 'written'],
  ...['format', 'version', 'test'],
])

/** What a build keeps of a test's readings; what is none where a reading should stand is left out. */
export function keptReadings(stored: StoredBuild, test: TestId): KeptReadings {
  const kept = stored.readings?.[test]
  if (kept === undefined) return noReadings
  return {
    rows: listOf(kept['rows']).map(numbersOf),
    lists: Object.fromEntries(
      Object.entries(groupOf(kept['lists'])).map(([name, list]) => [
        name,
        listOf(list).filter((one) => typeof one === 'number'),
      ]),
    ),
    instruments: Object.fromEntries(
      Object.entries(groupOf(kept['instruments'])).map(([name, one]) => [name, numbersOf(one)]),
    ),
    given: Object.fromEntries(
      Object.entries(groupOf(kept['given'])).flatMap(([name, one]) => {
        const given = givenOf(one)
        return given === null ? [] : [[name, given]]
      }),
    ),
    written: entriesOf(kept['written'], isText),
    rest: Object.fromEntries(Object.entries(kept).filter(([key]) => !formKeys.has(key))),
  }
}

/** A build that keeps these readings; one with none where nothing is left of them. */
export function withReadings(stored: StoredBuild, test: TestId, kept: KeptReadings): StoredBuild {
  const last = kept.rows.findLastIndex((row) => Object.keys(row).length > 0)
  const rows = kept.rows.slice(0, last + 1)
  const lists = Object.fromEntries(Object.entries(kept.lists).filter(([, list]) => list.length > 0))
  const { instruments, given, rest } = kept
  const written = Object.fromEntries(
    Object.entries(kept.written).filter(([place]) => bareText(kept, place) !== ''),
  )
  const parts = Object.entries({ rows, lists, instruments, given, written })
  const filled = parts.filter(([, part]) => Object.keys(part).length > 0)
  if (filled.length > 0 || Object.keys(rest).length > 0)
    return withEntry(stored, `readings.${test}`, { ...rest, ...Object.fromEntries(filled) })
  const others = Object.fromEntries(Object.entries(stored.readings ?? {}).filter(([name]) => name !== test))
  return withEntry(stored, 'readings', Object.keys(others).length === 0 ? undefined : others)
}

/** The same as a file of readings, as the engine reads it. */
export function readingsDocument(guide: Guide, test: TestId, kept: KeptReadings): JsonGroup {
  const { rows, lists, instruments, given } = kept
  const hasRows = guide.rows.length > 0
  const hasLists = guide.lists.length + guide.optionalLists.length > 0
  return {
    format: 'pitchline-readings',
    version: 1,
    test,
    ...(hasRows ? { rows } : {}),
    ...(hasLists
      ? { lists: { ...Object.fromEntries(guide.lists.map((name) => [name, []])), ...lists } }
      : {}),
    instruments,
    given,
  }
}
