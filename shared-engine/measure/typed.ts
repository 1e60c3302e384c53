/** Numbers of a pasted table: rows of cells, as a spreadsheet copies them. */
type TypedTable = readonly (readonly string[])[]

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
 * Cells of text that came from a spreadsheet or a file: a line a row; tabs between cells, else semicolons, else commas where
 * they can be no decimal ones (blanks behind them, or points beside them), else blanks. Empty lines are left out.
 *
 * @example pastedTable('3.9\t560\n7.8\t1150') // [['3.9', '560'], ['7.8', '1150']]
 */
export function pastedTable(text: string): TypedTable {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '')
  const between = betweenCells(lines)
  return lines.map((line) =>
    (between === '\t' ? line : line.trim()).split(between).map((cell) => cell.trim()),
  )
}

function betweenCells(lines: readonly string[]): string | RegExp {
  for (const mark of ['\t', ';']) if (lines.some((line) => line.includes(mark))) return mark
  const partsByComma =
    lines.every((line) => line.includes(',')) && lines.some((line) => /\.\d|,\s/.test(line))
  return partsByComma ? /,\s*/ : /\s+/
}
