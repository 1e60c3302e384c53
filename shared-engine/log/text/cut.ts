import papaparse from 'papaparse'

/** The characters that part the cells of a line, in the order in which they are tried. */
export const delimiters = ['\t', ';', '|', ',', ' '] as const

/**
 * Cuts lines into cells.
 *
 * Quotes are those of RFC 4180, but end with their line: a recorder that stops in the middle of a cell would otherwise
 * swallow the rest of the file. The parser lets them run on, so lines are given to it together where that makes no
 * difference, as the number of rows shows, and one by one where it does.
 *
 * *Source:* RFC 4180, sections 2.5 to 2.7.
 */
export class CellCutter {
  readonly #settings: { readonly delimiter: string; readonly newline: string }
  /** Whether blanks part the cells, as many as there are. */
  readonly runs: boolean

  /** @param delimiter one character; a blank stands for a run of blanks */
  constructor(delimiter: string) {
    this.#settings = { delimiter, newline: '\n' }
    this.runs = delimiter === ' '
  }

  /** The cells of one line. */
  line(line: string): readonly string[] {
    const text = this.runs ? joined(line) : line
    return text === '' ? [''] : (this.#parse(text)[0] ?? [''])
  }

  /**
   * The cells of many lines.
   *
   * @param text lines parted by LF, none at the end
   * @returns one row for each line
   */
  lines(text: string): readonly (readonly string[])[] {
    if (this.runs) return text.split('\n').map((line) => this.line(line))
    const rows = text === '' ? [['']] : this.#parse(text)
    if (!text.includes('"')) {
      if (text.endsWith('\n')) return rows.length === countLines(text) ? rows : [...rows, ['']]
      return rows
    }
    return rows.length === countLines(text) ? rows : text.split('\n').map((line) => this.line(line))
  }

  #parse(text: string): string[][] {
    return new papaparse.Parser(this.#settings).parse(text, 0, false).data
  }
}

const joined = (line: string) => line.trim().replace(/ +/g, ' ')

function countLines(text: string): number {
  let count = 1
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) count += 1
  return count
}
