import { plainNumber, readNumber, unreadable, type DecimalMark } from './number.ts'
import { readTime, type TimeForm } from './time-cell.ts'

/**
 * Reads cells one after the other; what the last one held stands in its fields, so that a million rows allocate nothing.
 */
export class CellReader {
  readonly #mark: DecimalMark
  readonly #code: number
  /** The number; NaN where nothing is there, `unreadable` where something else is, a time too. */
  value = NaN
  /** Form and seconds of a time; null where the cell is none. */
  form: TimeForm | null = null
  seconds = NaN
  /** Unit behind the number, as the table writes it; empty without one. */
  unit = ''

  constructor(mark: DecimalMark) {
    this.#mark = mark
    this.#code = mark.charCodeAt(0)
  }

  /** Reads a cell as it was cut. */
  read(cell: string): void {
    this.form = null
    this.unit = ''
    this.value = plainNumber(cell, this.#code)
    if (this.value === unreadable) this.#readSlowly(cell)
  }

  #readSlowly(cell: string): void {
    const text = cell.trim()
    if (text === '') {
      this.value = NaN
      return
    }
    const time = readTime(text)
    if (time !== null) {
      this.form = time.form
      this.seconds = time.seconds
      return
    }
    const { value, unit } = readNumber(text, this.#mark)
    this.value = value
    this.unit = unit
  }
}
