import { filled } from '../mapped.ts'
import { logUnits, type LogUnit } from '../../reference/columns.ts'
import type { AssignedColumn } from '../columns/assign.ts'
import { lookedAt, medianPositiveStep } from '../order-statistics.ts'
import type { Repairs } from '../repairs.ts'
import type { Grid, GridColumn } from '../text/grid.ts'

/** How a log says when: rows per second given by a person, a running count, seconds since 1970, times of day, dates. */
export type LogTimeForm = 'rate' | 'count' | 'epoch' | 'clock' | 'date'

/** The time of each row of the grid, in seconds; NaN where a row has none. */
export interface Stamps {
  readonly form: LogTimeForm
  readonly seconds: Float64Array
  /** Unit of a count; null for times. */
  readonly unit: LogUnit | null
  /** Place of the column that they come from; null for a rate. */
  readonly place: number | null
}

/** Cells that decide whether a column holds times. */
const cellsLookedAt = 20
/** Numbers from which a count of seconds is one since 1970: the year 1973. */
const epochFrom = 1e8

/**
 * Reads the time of each row.
 *
 * @param time the column named so; null without one: then the first column of times of day
 * @param date a column of dates, added to times of day
 * @returns null where the log has no time
 */
export function stampsOf(
  grid: Grid,
  time: AssignedColumn | null,
  date: AssignedColumn | null,
  repairs: Repairs,
): Stamps | null {
  if (time === null) {
    const first = (form: 'clock' | 'moment') =>
      grid.columns.findIndex((column) => mostForm(column, grid.count) === form)
    const clock = first('clock')
    const column = grid.columns[clock]
    if (column !== undefined) return clockStamps(grid, column, clock, date)
    const moment = first('moment')
    const dated = grid.columns[moment]
    return dated === undefined ? null : momentStamps(grid, dated, moment)
  }
  const form = mostForm(time.column, grid.count)
  if (form === 'clock') return clockStamps(grid, time.column, time.place, date)
  return form === null ? numberStamps(grid, time, repairs) : momentStamps(grid, time.column, time.place)
}

function momentStamps(grid: Grid, column: GridColumn, place: number): Stamps {
  const seconds = filled(grid.count, (row) => {
    const found = column.formAt(row)
    return found === 'moment' || found === 'day' ? column.secondsAt(row) : NaN
  })
  return { form: 'date', seconds, unit: null, place }
}

/** Stamps of rows that come at a steady rate. */
export function steadyStamps(count: number, rate: number): Stamps {
  return {
    form: 'rate',
    seconds: filled(count, (row) => row / rate),
    unit: null,
    place: null,
  }
}

/** The form that more than half of the first filled cells have; null for numbers. */
function mostForm(column: GridColumn, count: number): 'clock' | 'moment' | null {
  let seen = 0
  const forms = { clock: 0, moment: 0, day: 0 }
  for (let row = 0; row < count && seen < cellsLookedAt; row += 1) {
    if (!column.isFilled(row)) continue
    seen += 1
    const form = column.formAt(row)
    if (form !== null) forms[form] += 1
  }
  if (2 * (forms.clock + forms.moment) <= seen) return null
  return forms.clock > forms.moment ? 'clock' : 'moment'
}

function clockStamps(grid: Grid, column: GridColumn, place: number, date: AssignedColumn | null): Stamps {
  let day = NaN
  const seconds = new Float64Array(grid.count)
  for (let row = 0; row < grid.count; row += 1) {
    if (date?.column.formAt(row) === 'day') day = date.column.secondsAt(row)
    const clock = column.formAt(row) === 'clock' ? column.secondsAt(row) : NaN
    seconds[row] = date === null || Number.isNaN(day) ? clock : day + clock
  }
  return { form: Number.isNaN(day) ? 'clock' : 'date', seconds, unit: null, place }
}

const countUnits: readonly LogUnit[] = ['s', 'ms', 'us'].flatMap((key) => logUnits.get(key) ?? [])
const unitNamed = (key: string) => countUnits.find((unit) => unit.key === key) ?? null

function numberStamps(grid: Grid, time: AssignedColumn, repairs: Repairs): Stamps {
  const { values } = time.column
  const numbers: number[] = []
  let largest = -Infinity
  let counted = 0
  let first = -1
  for (let row = 0; row < grid.count; row += 1) {
    const value = (values[row] ?? NaN) * time.factor + time.offset
    if (!Number.isFinite(value)) continue
    if (numbers.length < lookedAt) numbers.push(value)
    if (first < 0) first = row
    counted += 1
    largest = Math.max(largest, value)
  }
  const step = medianPositiveStep(numbers)
  const written = time.unit
  const unit = written === null ? bareUnit(largest, step) : fittingUnit(written, step)
  if (written !== null && unit !== written) repairs.add('time-unit', 'time', grid.lines[first] ?? 1, counted)
  const times = unit?.times ?? 1
  const seconds = filled(grid.count, (row) => {
    const value = ((values[row] ?? NaN) * time.factor + time.offset) * times
    return Number.isFinite(value) ? value : NaN
  })
  const form = largest * times >= epochFrom ? 'epoch' : 'count'
  return { form, seconds, unit, place: time.place }
}

/** A unit that would make rows come faster than 1,100 or slower than 0.01 a second yields to one that does not. */
function fittingUnit(unit: LogUnit, step: number): LogUnit {
  const fits = ({ times }: LogUnit) => step * times >= 0.0009 && step * times <= 100
  return fits(unit) || Number.isNaN(step) ? unit : (countUnits.find(fits) ?? unit)
}

/** The unit of a bare number: by its size where it counts from 1970, else by its step. */
function bareUnit(largest: number, step: number): LogUnit | null {
  if (largest >= epochFrom) {
    if (largest < 1e11) return unitNamed('s')
    return unitNamed(largest < 1e14 ? 'ms' : 'us')
  }
  if (Number.isNaN(step) || step <= 5) return unitNamed('s')
  return unitNamed(step <= 5_000 ? 'ms' : 'us')
}
