import type { CellCutter } from './cut.ts'
import type { DecimalMark } from './number.ts'
import { filledCells, isRuledRow, isUnitsRow } from './heading.ts'
import { RowCells } from './row-cells.ts'
import { commentText, isBlank, isComment } from './lines.ts'

/** A line of the file, cut. */
interface CutLine {
  readonly cells: readonly string[]
  /** From 1. */
  readonly line: number
}

/** Where the data of a log begin, and what their columns are called. */
export interface Head {
  readonly headings: readonly string[]
  readonly units: readonly string[] | null
  /** Line of the heading; null without one. */
  readonly headerRow: number | null
  /** Data rows seen so far. */
  readonly rows: readonly CutLine[]
  /** First data row and heading are of different width. */
  readonly widthDiffers: boolean
}

interface Kept extends CutLine {
  readonly isValue: boolean
}

/** Rows before the first data row that are looked at as data too. */
const longestRun = 4_096

/**
 * Looks for the first data row: a row of values, at least two, above another of as many cells.
 *
 * The row above is the heading, or the second above where the first holds units alone; else the nearest remark above with
 * at least two cells. *Source:* common practice, no source.
 */
export class HeadFinder {
  #above: Kept[] = []
  #run: Kept[] = []
  #lastValues = 0
  #remark: CutLine | null = null
  readonly #cutter: CellCutter
  readonly #read: RowCells

  constructor(cutter: CellCutter, decimal: DecimalMark) {
    this.#cutter = cutter
    this.#read = new RowCells(decimal)
  }

  /** Looks at the next line; the head where this line made it complete. */
  look(text: string, line: number): Head | null {
    if (isBlank(text)) return null
    if (isComment(text)) {
      const cells = this.#cutter.line(commentText(text))
      if (cells.length >= 2) this.#remark = { cells, line }
      return null
    }
    const cells = this.#cutter.line(text)
    // A line of dashes under the headings is none.
    if (isRuledRow(cells)) return null
    const values = this.#valuesOf(cells)
    if (values === 0) return this.#put({ cells, line, isValue: false })
    const last = this.#run.at(-1)
    if (last !== undefined && last.cells.length === cells.length) {
      if (this.#lastValues >= 2) return this.#complete({ cells, line })
      if (this.#run.length === longestRun) this.#run.shift()
    } else this.#keepRun()
    this.#run.push({ cells, line, isValue: true })
    this.#lastValues = values
    return null
  }

  #put(row: Kept): null {
    this.#keepRun()
    this.#above = [...this.#above, row].slice(-2)
    return null
  }

  #keepRun(): void {
    this.#above = [...this.#above, ...this.#run].slice(-2)
    this.#run = []
  }

  /** How many cells are values; 0 where they are not more than half of the filled ones. */
  #valuesOf(cells: readonly string[]): number {
    this.#read.read(cells, cells.length)
    return this.#read.isValueRow ? this.#read.valueCount : 0
  }

  #complete(row: CutLine): Head {
    const rows = [...this.#run, row]
    const width = row.cells.length
    const [second, first] = [this.#above.at(-2), this.#above.at(-1)]
    const isHeading = (one: Kept | undefined): one is Kept =>
      one !== undefined && !one.isValue && filledCells(one.cells) >= 2
    if (isHeading(first)) {
      // In a file of blanks a name of two words, or none, would shift all that follow: a row of units that is as wide as the
      // data then names its columns by itself.
      const shifted = second?.cells.length !== width && first.cells.length === width && this.#cutter.runs
      const over = isUnitsRow(first.cells) && isHeading(second) && !shifted
      const heading = over ? second : first
      return headOf(heading, over ? first.cells : null, rows, width)
    }
    if (this.#remark !== null) return headOf(this.#remark, null, rows, width)
    const headings = Array.from({ length: width }, (_, place) => `column ${place + 1}`)
    return { headings, units: null, headerRow: null, rows, widthDiffers: false }
  }
}

function headOf(
  { cells, line }: CutLine,
  units: readonly string[] | null,
  rows: readonly CutLine[],
  width: number,
): Head {
  const headings = cells.map((cell) => cell.trim())
  return { headings, units, headerRow: line, rows, widthDiffers: headings.length !== width }
}
