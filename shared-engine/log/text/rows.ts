import { channelNamed } from '../columns/words.ts'
import type { Repairs } from '../repairs.ts'
import type { CellCutter } from './cut.ts'
import type { Grid, GridColumn } from './grid.ts'
import type { Head } from './head.ts'
import { foldedName, isUnitsRow, unitInCell, unitInHeading } from './heading.ts'
import { isBlank, isComment } from './lines.ts'
import type { DecimalMark } from './number.ts'
import { RowCells } from './row-cells.ts'

/** A column of the current heading: where its numbers go, and what brings them to the column's first unit. */
interface Place {
  readonly column: GridColumn
  times: number
  plus: number
}

/** Reads the rows below the first heading into a grid; counts what it leaves out. */
export class RowReader {
  readonly #cutter: CellCutter
  readonly #cells: RowCells
  readonly #grid: Grid
  readonly #repairs: Repairs
  #places: Place[] = []
  #names: ReadonlySet<string> = new Set()

  constructor(grid: Grid, head: Head, cutter: CellCutter, decimal: DecimalMark, repairs: Repairs) {
    this.#grid = grid
    this.#cutter = cutter
    this.#cells = new RowCells(decimal)
    this.#repairs = repairs
    this.#takeHeading(head.headings)
    this.#takeUnits(head.units ?? [])
    if (head.widthDiffers) {
      repairs.add('width', null, head.rows[0]?.line ?? 1)
      this.#widen(head.rows[0]?.cells.length ?? 0)
    }
    for (const { cells, line } of head.rows) this.#row(cells, line, false)
  }

  /**
   * Reads whole lines.
   *
   * @param text lines parted by LF
   * @param line number of the first
   * @returns how many lines there were
   */
  lines(text: string, line: number): number {
    const rows = this.#cutter.lines(text)
    const written = text.includes('"') ? text.split('\n') : null
    for (let place = 0; place < rows.length; place += 1) {
      const cells = rows[place] ?? []
      const first = written?.[place] ?? cells[0] ?? ''
      if (maybeComment(first) && isComment(first)) continue
      if (cells.length === 1 && isBlank(first)) continue
      this.#row(cells, line + place, false)
    }
    return rows.length
  }

  /** Reads what stands behind the last line end. */
  unended(text: string, line: number): void {
    if (!isBlank(text) && !isComment(text)) this.#row(this.#cutter.line(text), line, true)
  }

  #row(cells: readonly string[], line: number, unended: boolean): void {
    const width = this.#places.length
    let length = cells.length
    while (length > width && isBlank(cells[length - 1] ?? '')) length -= 1
    if (unended && length < width) {
      this.#repairs.add('cut-tail', null, line)
      return
    }
    this.#cells.read(cells, length)
    if (!this.#cells.isValueRow) {
      this.#noData(cells, line)
      return
    }
    if (length < width) this.#repairs.add('short-row', null, line)
    if (length > width) {
      this.#repairs.add('extra-cells', null, line)
      this.#widen(length)
    }
    this.#store(line)
  }

  #store(line: number): void {
    const row = this.#grid.addRow(line)
    const { values, length, times, units } = this.#cells
    for (let place = 0; place < length; place += 1) {
      const target = this.#places[place]
      if (target === undefined) continue
      const value = values[place] ?? NaN
      target.column.values[row] =
        target.times === 1 && target.plus === 0 ? value : value * target.times + target.plus
    }
    for (const { place, form, seconds } of times) this.#places[place]?.column.setTime(row, form, seconds)
    for (const { place, unit } of units) {
      const column = this.#places[place]?.column
      if (column?.cellUnit === '') column.cellUnit = unit
    }
  }

  /** A row that is no data: a heading once more, a row of units, or text. */
  #noData(cells: readonly string[], line: number): void {
    const own = cells.filter((cell) => this.#names.has(foldedName(cell))).length
    const units = isUnitsRow(cells)
    if (own >= 2 || (!units && cells.filter((cell) => channelNamed(cell) !== null).length >= 2)) {
      this.#repairs.add('repeated-header', null, line)
      this.#takeHeading(cells.map((cell) => cell.trim()))
      this.#grid.breaks.push(this.#grid.count)
    } else if (units) this.#takeUnits(cells)
    else this.#repairs.add('text-row', null, line)
  }

  /** Columns of the same name go on; equal names in one heading count from the left. */
  #takeHeading(headings: readonly string[]): void {
    const columns = [...this.#grid.columns]
    this.#places = headings.map((name, place) => {
      const folded = foldedName(name)
      const at = folded === '' ? -1 : columns.findIndex((one) => foldedName(one.name) === folded)
      const [known] = at === -1 ? [] : columns.splice(at, 1)
      if (known !== undefined) return { column: known, times: 1, plus: 0 }
      const label = name === '' ? `column ${place + 1}` : name
      return { column: this.#grid.addColumn(label, unitInHeading(name)), times: 1, plus: 0 }
    })
    this.#names = new Set(headings.map(foldedName).filter((name) => name !== ''))
  }

  /** Units of the current heading: a column's first stands, later ones are brought to it. */
  #takeUnits(cells: readonly string[]): void {
    cells.forEach((cell, index) => {
      const unit = unitInCell(cell)
      const place = this.#places[index]
      if (unit === null || place === undefined) return
      const first = place.column.unit
      if (this.#grid.count === 0 || first === null) place.column.unit = unit
      else if (first.kind === unit.kind) {
        place.times = unit.times / first.times
        place.plus = first.zero - unit.zero * place.times
      }
    })
  }

  #widen(length: number): void {
    for (let place = this.#places.length; place < length; place += 1) {
      this.#places.push({ column: this.#grid.addColumn(`column ${place + 1}`, null), times: 1, plus: 0 })
    }
  }
}

/** Whether a cell's first character is a blank or the mark of a remark: a quick look before the exact one. */
function maybeComment(cell: string): boolean {
  const code = cell.charCodeAt(0)
  return code <= 37 || code === 47 || code >= 128
}
