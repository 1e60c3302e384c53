/** Numbers of a pasted table: rows of cells, as a spreadsheet copies them. */
export type TypedTable = readonly (readonly string[])[]

const plain = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i

/**
 * A number as it is typed on a bench form: a point or a comma before its decimals, a true minus, no groups of digits.
 *
 * @returns null where the text is none
 * @example typedNumber('12,5') // 12.5
 */
export function typedNumber(text: string): number | null {
  const written = text.trim().replace('−', '-').replace(',', '.')
  if (!plain.test(written)) return null
  const value = Number(written)
  return Number.isFinite(value) ? value : null
}

/**
 * Cells of text that came from a spreadsheet: a line a row; tabs between cells, else semicolons, else blanks. Empty lines
 * are left out.
 *
 * @example pastedTable('3.9\t560\n7.8\t1150') // [['3.9', '560'], ['7.8', '1150']]
 */
export function pastedTable(text: string): TypedTable {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '')
  const between = text.includes('\t') ? '\t' : text.includes(';') ? ';' : /\s+/
  return lines.map((line) =>
    (between === '\t' ? line : line.trim()).split(between).map((cell) => cell.trim()),
  )
}

/** Numbers of one list: `8.2; 8.3 8.25`. Null where one of them is none. */
export function typedList(text: string): readonly number[] | null {
  const cells = text.split(/[;\s]+/).filter((cell) => cell !== '')
  const numbers = cells.map(typedNumber)
  return numbers.includes(null) ? null : numbers.flatMap((number) => (number === null ? [] : [number]))
}
