import { CellReader } from './cell.ts'
import type { DecimalMark } from './number.ts'
import type { TimeForm } from './time-cell.ts'

/** A time that was found in a row. */
interface FoundTime {
  readonly place: number
  readonly form: TimeForm
  readonly seconds: number
}

/** The cells of one row, read; filled again for each row. */
export class RowCells {
  values = new Float64Array(32)
  readonly times: FoundTime[] = []
  /** Places with a unit behind the number. */
  readonly units: { readonly place: number; readonly unit: string }[] = []
  length = 0
  filled = 0
  /** Cells that are numbers or times. */
  valueCount = 0
  readonly #reader: CellReader

  constructor(decimal: DecimalMark) {
    this.#reader = new CellReader(decimal)
  }

  /** Reads the first `length` cells of a row. */
  read(cells: readonly string[], length: number): void {
    if (length > this.values.length) this.values = new Float64Array(2 * length)
    // Setting a length costs as much as reading a cell, and most rows have neither.
    if (this.times.length > 0) this.times.length = 0
    if (this.units.length > 0) this.units.length = 0
    this.length = length
    this.filled = 0
    this.valueCount = 0
    const reader = this.#reader
    for (let place = 0; place < length; place += 1) {
      reader.read(cells[place] ?? '')
      const { form, value } = reader
      this.values[place] = value
      if (form !== null) this.times.push({ place, form, seconds: reader.seconds })
      else if (Number.isNaN(value)) continue
      else if (reader.unit !== '') this.units.push({ place, unit: reader.unit })
      this.filled += 1
      if (form !== null || value !== Infinity) this.valueCount += 1
    }
  }

  /** Whether more than half of the filled cells are values. */
  get isValueRow(): boolean {
    return 2 * this.valueCount > this.filled
  }
}
