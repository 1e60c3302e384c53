import { CellCutter, delimiters } from './cut.ts'
import { showsMark, type DecimalMark } from './number.ts'

/** How a log parts its cells and writes its decimals. */
export interface Dialect {
  readonly delimiter: string
  readonly decimal: DecimalMark
}

/** A file's own word on its delimiter, as the first line: `sep=;`. *Source:* common practice, no source. */
export function declaredDelimiter(line: string): string | null {
  return /^\s*"?sep=(.)"?\s*$/i.exec(line)?.[1] ?? null
}

/** How many lines decide. */
export const linesLookedAt = 200

/**
 * The delimiter and the decimal mark of a log.
 *
 * The delimiter is the first of tab, semicolon, bar, comma and blanks that parts at least half of the lines; the mark is
 * a comma where more cells are numbers with it than with a point.
 *
 * @param lines the first of the file, without blank ones and remarks
 * @param declared what the file or the person says of the delimiter; wins
 * @returns null where nothing parts the lines: one column alone
 * *Source:* common practice, no source.
 */
export function dialectOf(
  lines: readonly string[],
  declared: { readonly delimiter?: string | null; readonly decimal?: DecimalMark },
): Dialect | null {
  const looked = lines.slice(0, linesLookedAt)
  const delimiter =
    declared.delimiter ??
    delimiters.find((one) => {
      const cutter = new CellCutter(one)
      const cut = looked.filter((line) => line.includes(one) && cutter.line(line).length >= 2)
      return cut.length > 0 && 2 * cut.length >= looked.length
    })
  if (delimiter === undefined) return null
  return { delimiter, decimal: declared.decimal ?? decimalOf(looked, new CellCutter(delimiter)) }
}

function decimalOf(lines: readonly string[], cutter: CellCutter): DecimalMark {
  let commas = 0
  let points = 0
  for (const line of lines) {
    for (const cell of cutter.line(line)) {
      const text = cell.trim()
      if (showsMark(text, ',')) commas += 1
      else if (showsMark(text, '.')) points += 1
    }
  }
  return commas > points ? ',' : '.'
}
