import { benchUnitOf, fieldOf } from '../entries/fields.ts'
import { failed, succeeded, type Result } from '../mistakes/mistake.ts'
import { differenceFromEngine, fromEngine, unitOf } from '../units/convert.ts'
import { readEntry } from '../units/entry.ts'
import type { QuantityKind } from '../units/kinds.ts'
import { pastedTable, typedNumber } from './typed.ts'
import { readingLabel } from './words.ts'

/** Kind of quantity by the unit that a reading's label ends with. */
const kinds: Readonly<Record<string, QuantityKind>> = {
  kg: 'mass',
  g: 'mass',
  mm: 'length',
  m: 'distance',
  s: 'time',
  A: 'amps',
  V: 'volts',
  W: 'watts',
  N: 'force',
  Hz: 'frequency',
  rpm: 'rpm',
  'm/s': 'speed',
  mAh: 'charge',
  '°C': 'temperature',
  'g·cm²': 'inertia',
  '%': 'percent',
}

/** A reading's unit with its kind: that of its entry, or what its label ends with; a plain number else. */
function unitOfReading(name: string): { readonly kind: QuantityKind; readonly unit: string } {
  const field = fieldOf(name)
  if (field !== undefined && field.kind !== 'text') return { kind: field.kind, unit: benchUnitOf(field) }
  const unit = /[ ,]([^ ,]+)$/.exec(readingLabel(name))?.[1] ?? ''
  const kind = kinds[unit]
  return kind === undefined ? { kind: 'none', unit: '' } : { kind, unit }
}

/** Unit in a table's heading, such as "lb" of "Pull (lb)", "Pull [lb]" and "Pull, lb"; empty where there is none of the kind. */
function unitInHeading(name: string, heading: string): string {
  const written = /[([,/]\s*([^()[\],/]+?)\s*[)\]]?$/.exec(heading)?.[1] ?? ''
  return unitOf(unitOfReading(name).kind, written) === null ? '' : written
}

/**
 * A reading as it is typed: a number or a simple sum in the reading's own unit, or with another unit of its kind behind it.
 *
 * A comma that could part thousands (`1,234`) is refused with the question which; a temperature may be in °F.
 *
 * @param name of a column, list or given number
 * @returns the number in the reading's own unit, as readings are kept
 * @example typedReading('pullKg', '18 lb') // { ok: true, value: 8.16466266 }
 */
export function typedReading(name: string, text: string): Result<number> {
  const { kind, unit } = unitOfReading(name)
  const read = readEntry(text, kind, { unit })
  const plain = typedNumber(text)
  if (!read.ok) {
    const asked = read.mistakes.some(({ code }) => code === 'entry-ambiguous')
    return plain !== null && !asked ? succeeded(plain) : failed(read.mistakes)
  }
  if (read.value.tolerance !== undefined)
    return refused(text, 'the reading alone: how far it may be off is its instrument’s')
  // What has no unit stays as it was typed; a conversion leaves its last digits behind.
  return succeeded(plain ?? Number(fromEngine(read.value.value, kind, unit).toPrecision(14)))
}

/** How far a number may be off: in its own unit, or as a share of it. */
type TypedSpread = { readonly plusMinus: number } | { readonly plusMinusPercent: number }

/**
 * How far a reading or given number may be off, as it is typed: in its own unit, with another one behind it, or in % of it.
 *
 * @param name of a column, list or given number
 * @returns in the number's own unit, 0 or more; why not, where the text means no such thing
 * @example typedSpread('spanMm', '1/2 in') // { ok: true, value: { plusMinus: 12.7 } }
 */
export function typedSpread(name: string, text: string): Result<TypedSpread> {
  const { kind, unit } = unitOfReading(name)
  const read = readEntry(`1 ± ${text}`, kind, { unit })
  if (!read.ok) return failed(read.mistakes.map((one) => ({ ...one, value: text.trim() })))
  const { tolerance } = read.value
  if (tolerance === undefined) return refused(text, 'a number of 0 or more')
  if ('plusMinusPercent' in tolerance) return succeeded(tolerance)
  const own = differenceFromEngine(tolerance.plusMinus, kind, unit)
  return succeeded({ plusMinus: typedNumber(text) ?? Number(own.toPrecision(14)) })
}

const refused = (value: string, allowed: string): Result<never> =>
  failed([{ code: 'entry-not-understood', path: '', value: value.trim(), allowed, kept: '' }])

/** Numbers of a list, each with the unit behind it. */
function cellsOf(text: string): readonly string[] {
  const cells: string[] = []
  for (const part of text.split(/[;\s]+/).filter((one) => one !== '')) {
    const before = cells.at(-1)
    if (/\d/.test(part) || before === undefined) cells.push(part)
    else cells[cells.length - 1] = `${before} ${part}`
  }
  return cells
}

/**
 * Repeats of one reading, a blank or semicolon between: each with its unit, or one unit behind the last for all of them.
 *
 * @example typedReadings('pullKg', '8.2 8,3') // { ok: true, value: [8.2, 8.3] }
 */
export function typedReadings(name: string, text: string): Result<readonly number[]> {
  const cells = cellsOf(text)
  const bare = cells.filter((cell) => typedNumber(cell) !== null).length
  const forAll =
    bare > 0 && bare === cells.length - 1 ? /[^\d.,\s].*$/.exec(cells.at(-1) ?? '')?.[0] : undefined
  if (bare > 0 && bare < cells.length && forAll === undefined)
    return refused(text, 'a unit behind each of them, or one behind the last for all')
  const numbers: number[] = []
  for (const cell of cells) {
    const read = typedReading(
      name,
      forAll === undefined || typedNumber(cell) === null ? cell : `${cell} ${forAll}`,
    )
    if (!read.ok) return read
    numbers.push(read.value)
  }
  return succeeded(numbers)
}

/** One cell of a pasted table: where it goes, as it was written with its unit, and what it reads as; null where it is none. */
interface PastedCell {
  readonly row: number
  readonly name: string
  readonly text: string
  readonly value: number | null
}

/** A table from a spreadsheet over the columns of a test. */
export interface PastedTable {
  readonly cells: readonly PastedCell[]
  /** Lines without the headings. */
  readonly rows: number
  /** Columns that the test has no place for: their headings, or their numbers from 1. */
  readonly leftOut: readonly string[]
}

/**
 * A table from a spreadsheet laid over the columns of a test: a first line without a number is its headings, whose units
 * hold for what stands below them. A column goes where its heading says, by name or by a unit that only one of them has;
 * the others stay in their order.
 *
 * @param names columns from the one on that the table is pasted into
 */
export function pastedReadings(text: string, names: readonly string[]): PastedTable {
  const table = pastedTable(text)
  const [first = []] = table
  const isHeading = table.length > 1 && first.every((cell) => !/\d/.test(cell))
  const wide = Math.max(0, ...table.map((cells) => cells.length))
  const places = isHeading ? placesByHeading(names, first, wide) : names
  const unitAt = (at: number) => (isHeading ? unitInHeading(places[at] ?? '', first[at] ?? '') : '')
  const withCommas = table.some((cells) => cells.some((cell) => /^[-−+]?\d*,(\d{1,2}|\d{4,})$/.test(cell)))
  const lines = table.slice(isHeading ? 1 : 0)
  const cells = lines.flatMap((line, row) =>
    line.flatMap((cell, at): readonly PastedCell[] => {
      const name = places[at]
      if (name === undefined || cell === '') return []
      const unit = typedNumber(cell) === null ? '' : unitAt(at)
      const text = unit === '' ? cell : `${cell} ${unit}`
      return [{ row, name, text, value: valueIn(name, text, withCommas) }]
    }),
  )
  const isFilled = (at: number) => lines.some((line) => (line[at] ?? '') !== '')
  const leftOut = Array.from({ length: wide }, (_, at) => at).flatMap((at) =>
    places[at] === undefined && isFilled(at) ? [(isHeading && first[at]) || `column ${at + 1}`] : [],
  )
  return { cells, rows: lines.length, leftOut }
}

const letters = (text: string) => text.toLowerCase().replace(/[^\p{L}]/gu, '')

/** Whether a heading names a column: as its form does, as its file does, or by the unit alone. */
function isNamed(name: string, heading: string): boolean {
  const [label = ''] = readingLabel(name).split(',')
  const [words = ''] = heading.split(/[([,/]/)
  const { unit } = unitOfReading(name)
  return heading.trim() === unit || [label, name].some((one) => letters(one) === letters(words))
}

/** The column of a test for each column of a table with headings; undefined where it has none. */
function placesByHeading(
  names: readonly string[],
  headings: readonly string[],
  wide: number,
): readonly (string | undefined)[] {
  const only = (fits: (name: string) => boolean) => {
    const [one, other] = names.filter(fits)
    return other === undefined ? one : undefined
  }
  const meant = Array.from({ length: wide }, (_, at) => {
    const heading = headings[at] ?? ''
    return only((name) => isNamed(name, heading)) ?? only((name) => unitInHeading(name, heading) !== '')
  })
  const found = meant.filter((name) => name !== undefined)
  // Two columns with one name: none of the headings can be trusted.
  if (new Set(found).size < found.length) return names
  return meant.map((name, at) => {
    const here = names[at]
    return name ?? (here !== undefined && found.includes(here) ? undefined : here)
  })
}

/** A cell of a table whose decimals, as other cells show, stand behind a comma: there `1.150` may well be a thousand. */
function valueIn(name: string, text: string, withCommas: boolean): number | null {
  if (withCommas && /^[-−+]?\d{1,3}(\.\d{3})+(?![\d,])/.test(text)) return null
  const read = typedReading(name, withCommas ? text.replace(/^([-−+]?\d+),(\d+)(?![\d,])/, '$1.$2') : text)
  return read.ok ? read.value : null
}
