import { mistakeAt, failed, type Mistake, type Result } from '../mistakes/mistake.ts'
import type { Pattern } from './drive.ts'
import { patternFormat, patternVersion, readPatternValue, rowKeys, type RowKey } from './read.ts'

/** Words that a table's heading may use for an entry, beside the entry's own name. */
const headings: Readonly<Record<RowKey, readonly string[]>> = {
  seconds: ['seconds', 'time', 's', 'duration'],
  throttlePercent: ['throttle', 'duty'],
  speedKmh: ['speed', 'km/h', 'kmh'],
  speedPercent: ['speed share', 'share of top speed', 'speed of top'],
  brakePercent: ['brake', 'braking'],
  gradePercent: ['grade', 'slope', 'gradient'],
  loadKg: ['load', 'kg'],
  towForceN: ['tow', 'pull', 'n'],
  resistancePercent: ['resistance', 'rolling resistance'],
  gripPercent: ['grip'],
  turnPercent: ['turn', 'turns', 'turning'],
}

/** A heading without its unit, capitals and marks. */
const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/\(.*?\)|\[.*?\]|%/g, ' ')
    .replace(/[_\s]+/g, ' ')
    .trim()

function keyOf(heading: string): RowKey | undefined {
  const own = rowKeys.find((key) => key.toLowerCase() === heading.trim().toLowerCase())
  return own ?? rowKeys.find((key) => headings[key].includes(plain(heading)))
}

/** What stands between the cells of a line: tabs of a spreadsheet, semicolons, else commas. */
const separatorOf = (line: string) => (line.includes('\t') ? '\t' : line.includes(';') ? ';' : ',')

/**
 * Rows of a pattern from a table, as a spreadsheet copies it: a line of headings, a line for each row, an empty cell for
 * what a row leaves as it is. Decimal commas count where no comma stands between cells.
 *
 * @param name what the pattern is to be called
 * @returns the pattern, or every mistake at once with the row's place
 */
export function patternFromTable(text: string, name: string): Result<Pattern> {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '')
  const [head, ...body] = lines
  if (head === undefined) return failed([mistakeAt('empty-file', '', text, 'a line of headings and rows')])
  const separator = separatorOf(head)
  const found = head.split(separator).map((heading) => ({ heading: heading.trim(), key: keyOf(heading) }))
  const mistakes = headingMistakes(found)
  if (mistakes.length > 0) return failed(mistakes)
  const rows = body.map((line) => {
    const cells = line.split(separator)
    return Object.fromEntries(
      found.flatMap(({ key }, at) => {
        const cell = (cells[at] ?? '').trim()
        return key === undefined || cell === '' ? [] : [[key, numberOf(cell, separator)]]
      }),
    )
  })
  return readPatternValue({ format: patternFormat, version: patternVersion, name, rows })
}

function headingMistakes(found: readonly { heading: string; key: RowKey | undefined }[]): Mistake[] {
  const allowed = rowKeys.join(', ')
  return found.flatMap(({ heading, key }, at) => {
    if (key === undefined) return [mistakeAt('unknown-pattern-key', `column ${at + 1}`, heading, allowed)]
    const first = found.findIndex((other) => other.key === key)
    return first < at
      ? [
          mistakeAt(
            'unknown-pattern-key',
            `column ${at + 1}`,
            heading,
            `${key} once, it is column ${first + 1}`,
          ),
        ]
      : []
  })
}

/** A number, or the text itself, for the reader to refuse it by its place. */
function numberOf(cell: string, separator: string): number | string {
  const text = (separator === ',' ? cell : cell.replace(',', '.')).replace('−', '-').replace(/%$/, '').trim()
  const value = Number(text)
  return text === '' || Number.isNaN(value) ? cell : value
}
