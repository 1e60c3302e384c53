import { toEngine } from '../units/convert.ts'
import { benchUnitOf, fieldOf, groups } from './fields.ts'
import { keysOf, patternOf, valueAt } from './path.ts'
import type { Field, Row } from './rows/row.ts'

/** Sound entries of a build that may have unsound ones: the rules between entries look through it. */
export interface EntryReader {
  /** What stands at a path, sound or not. */
  readonly raw: (path: string) => unknown
  /** A number in its bench unit: as entered, or its default, held to no range; undefined where it is unsound or nothing stands there. */
  readonly number: (path: string) => number | undefined
  /** The same in the engine's unit. */
  readonly si: (path: string) => number | undefined
  /** One of the words that the entry may be. */
  readonly word: (path: string) => string | undefined
  /** How many items a list has; 0 where there is none. */
  readonly length: (path: string) => number
}

/**
 * Looks into a build as it came out of its file.
 *
 * @param known what is known of the entry at a path
 */
export function entryReaderOf(
  build: unknown,
  known: (path: string) => Field | undefined = fieldOf,
): EntryReader {
  const raw = (path: string) => valueAt(build, keysOf(path))
  const inForce = (path: string, field: Field | undefined) => {
    const entered = raw(path)
    return entered === undefined && field !== undefined ? standardOf(field, reader, path) : entered
  }
  const number = (path: string) => {
    const field = known(path)
    const { low = -Infinity, high = Infinity, whole } = field ?? {}
    const value = inForce(path, field)
    if (typeof value !== 'number') return undefined
    // A range is for what is entered: what other entries decide may lie outside, as air that is colder than a pack may be.
    if (raw(path) === undefined) return value
    const sound = value >= low && value <= high
    return sound && (whole !== true || Number.isInteger(value)) ? value : undefined
  }
  const reader: EntryReader = {
    raw,
    number,
    si: (path) => {
      const [value, field] = [number(path), known(path)]
      return value === undefined || field === undefined ? undefined : toEngine(value, field.kind)
    },
    word: (path) => {
      const field = known(path)
      const value = inForce(path, field)
      return field?.choices?.find((choice) => choice.value === value)?.value
    },
    length: (path) => {
      const list = raw(path)
      // Past the longest that is allowed, the list itself is the mistake.
      return Array.isArray(list) ? Math.min(list.length, groups[patternOf(path)]?.most ?? list.length) : 0
    },
  }
  return reader
}

/** What is in force where an entry is absent: its default, or the one that other entries decide. */
export function standardOf(field: Field, entries: EntryReader, path: string): Row['default'] {
  return field.default ?? field.defaultFrom?.of(entries, keysOf(path).slice(0, -1).join('.'))
}

/**
 * A number of an entry with its unit, for a sentence; six digits are enough to find it again.
 *
 * @example shownEntry('track.pitchMm', 20) // '20 mm'
 */
export function shownEntry(path: string, value: number): string {
  const field = fieldOf(path)
  const unit = field === undefined ? '' : benchUnitOf(field)
  const digits = String(Number(value.toPrecision(6)))
  return unit === '' || unit === '%' || unit === '°' ? `${digits}${unit}` : `${digits} ${unit}`
}
