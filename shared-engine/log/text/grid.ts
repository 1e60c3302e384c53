import type { LogUnit } from '../../reference/columns.ts'
import type { TimeForm } from './time-cell.ts'

/** Forms of times as they are stored; 0 stands for a cell that is none. */
const formCodes: Readonly<Record<TimeForm, number>> = { clock: 1, moment: 2, day: 3 }
const forms: readonly (TimeForm | null)[] = [null, 'clock', 'moment', 'day']

/** Numbers of a column that decide on what it can be. */
const numbersKept = 1_000

/** One column of the file: a number for each row, and times where cells are times. */
export class GridColumn {
  values: Float64Array
  #times: Float64Array | null = null
  #forms: Uint8Array | null = null
  #first: readonly number[] | null = null
  /** Unit that stood behind the first number with one; empty without. */
  cellUnit = ''

  /** As the heading has it. */
  readonly name: string
  /** Of the heading or of the row of units. */
  unit: LogUnit | null

  constructor(name: string, unit: LogUnit | null, capacity: number) {
    this.name = name
    this.unit = unit
    this.values = new Float64Array(capacity).fill(NaN)
  }

  /** Puts a time into a row; its number is unreadable then. */
  setTime(row: number, form: TimeForm, seconds: number): void {
    this.#times ??= new Float64Array(this.values.length)
    this.#forms ??= new Uint8Array(this.values.length)
    this.values[row] = Infinity
    this.#times[row] = seconds
    this.#forms[row] = formCodes[form]
  }

  /** Form of the time in a row; null where the cell is none. */
  formAt(row: number): TimeForm | null {
    return forms[this.#forms?.[row] ?? 0] ?? null
  }

  /** Seconds of the time in a row; NaN where the cell is none. */
  secondsAt(row: number): number {
    return this.formAt(row) === null ? NaN : (this.#times?.[row] ?? NaN)
  }

  /** Whether a row's cell is filled, with whatever. */
  isFilled(row: number): boolean {
    return !Number.isNaN(this.values[row] ?? NaN)
  }

  /** The first finite numbers, of all rows; `count` rows are filled. */
  firstNumbers(count: number): readonly number[] {
    if (this.#first !== null) return this.#first
    const numbers: number[] = []
    for (let row = 0; row < count && numbers.length < numbersKept; row += 1) {
      const value = this.values[row] ?? NaN
      if (Number.isFinite(value)) numbers.push(value)
    }
    return numbers
  }

  /** Lets go of all but its first numbers: what was read of it stands elsewhere. */
  letGo(count: number): void {
    this.taken(count)
  }

  /** Gives its numbers away, and keeps the first alone: a long log need not be held, nor written, twice. */
  taken(count: number): Float64Array {
    const { values } = this
    this.#first = this.firstNumbers(count)
    this.values = new Float64Array()
    this.#times = this.#forms = null
    return values
  }

  grow(capacity: number): void {
    // What lies behind the rows is not touched before its row is added: memory that is had at once holds everything up.
    this.values = grown(this.values, new Float64Array(capacity))
    if (this.#times !== null) this.#times = grown(this.#times, new Float64Array(capacity))
    if (this.#forms !== null) this.#forms = grown(this.#forms, new Uint8Array(capacity))
  }
}

function grown<A extends Float64Array | Uint8Array>(from: A, to: A): A {
  to.set(from)
  return to
}

/** The rows of a file as numbers, column by column: eight bytes for each cell. */
export class Grid {
  readonly columns: GridColumn[] = []
  /** Line of the file of each row, from 1. */
  lines: Float64Array
  count = 0
  /** Rows before which a heading stood again. */
  readonly breaks: number[] = []
  /** Rows that there will be in the end, by what was read so far; 0: nobody knows. */
  expected = 0

  /** @param capacity rows that are expected; it grows beyond */
  constructor(capacity: number) {
    this.lines = new Float64Array(Math.max(16, capacity))
  }

  addColumn(name: string, unit: LogUnit | null): GridColumn {
    const column = new GridColumn(name, unit, this.lines.length)
    this.columns.push(column)
    return column
  }

  /** A new row, empty so far; its number from 0. */
  addRow(line: number): number {
    if (this.count === this.lines.length) this.#grow()
    const row = this.count
    this.lines[row] = line
    for (const column of this.columns) column.values[row] = NaN
    this.count += 1
    return row
  }

  /** At once to what is expected, but by no more than four times: the first rows can mislead. */
  #grow(): void {
    const known = this.lines.length
    const capacity = Math.ceil(Math.min(4 * known, Math.max(1.5 * known, this.expected)))
    this.lines = grown(this.lines, new Float64Array(capacity))
    for (const column of this.columns) column.grow(capacity)
  }
}
