import { withEntry, type StoredBuild } from '../../shared-engine/index.ts'
import { isJsonGroup, type JsonGroup } from '../../shared-engine/entries/json-group.ts'
import type { Instrument } from '../../shared-engine/measure/readings.ts'
import type { Guide, TestId } from '../../shared-engine/reference/measurements.ts'

/** A number given beside readings: bare, or with how far it may be off. */
export type Given = string | number | { readonly value: number; readonly plusMinus: number }

/** Readings of one test as the build keeps them: what was typed and reads as a number, whole or not. */
export interface KeptReadings {
  readonly rows: readonly Readonly<Record<string, number>>[]
  readonly lists: Readonly<Record<string, readonly number[]>>
  readonly instruments: Readonly<Record<string, Partial<Instrument>>>
  readonly given: Readonly<Record<string, Given>>
}

const none: KeptReadings = { rows: [], lists: {}, instruments: {}, given: {} }

const groupOf = (value: unknown): JsonGroup => (isJsonGroup(value) ? value : {})

function numbersOf(value: unknown): Record<string, number> {
  const numbers = Object.entries(groupOf(value)).filter(([, one]) => typeof one === 'number')
  return Object.fromEntries(numbers) as Record<string, number>
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? (value as unknown[]) : [])

function givenOf(value: unknown): Given | null {
  if (typeof value === 'number' || typeof value === 'string') return value
  const { value: number, plusMinus } = numbersOf(value)
  return number === undefined ? null : { value: number, plusMinus: plusMinus ?? 0 }
}

/** What a build keeps of a test's readings; what no form of ours has written is left out. */
export function keptReadings(stored: StoredBuild, test: TestId): KeptReadings {
  const kept = stored.readings?.[test]
  if (kept === undefined) return none
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
  }
}

const isEmpty = ({ rows, lists, instruments, given }: KeptReadings) =>
  rows.length === 0 && [lists, instruments, given].every((group) => Object.keys(group).length === 0)

/** A build that keeps these readings; one with none where nothing is left of them. */
export function withReadings(stored: StoredBuild, test: TestId, kept: KeptReadings): StoredBuild {
  const last = kept.rows.findLastIndex((row) => Object.keys(row).length > 0)
  const lists = Object.fromEntries(Object.entries(kept.lists).filter(([, list]) => list.length > 0))
  const whole = { ...kept, rows: kept.rows.slice(0, last + 1), lists }
  const document = Object.fromEntries(
    Object.entries(whole).filter(([, part]) => Object.keys(part as object).length > 0),
  )
  if (!isEmpty(whole)) return withEntry(stored, `readings.${test}`, document)
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
