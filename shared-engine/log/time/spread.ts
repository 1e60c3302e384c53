import type { Repairs } from '../repairs.ts'
import type { Grid, GridColumn } from '../text/grid.ts'
import { lookedAt, medianPositiveStep } from '../order-statistics.ts'

/** Rows that have a time: their numbers in the grid, and their seconds. */
export interface TimedRows {
  readonly rows: Int32Array
  readonly seconds: Float64Array
  readonly count: number
  /** m, s: the median step above zero; NaN without one. */
  readonly step: number
}

/**
 * The rows with a time; rows of one stamp that have no channel in common become one.
 *
 * @param seconds stamp of each row; what stays of them is kept in place
 * @param channels columns with a meaning; a row that is joined gives its cells to the row before
 */
export function timedRowsOf(
  grid: Grid,
  seconds: Float64Array,
  channels: readonly GridColumn[],
  repairs: Repairs,
): TimedRows {
  const rows = new Int32Array(grid.count)
  const breaks = new Set(grid.breaks)
  let count = 0
  for (let row = 0; row < grid.count; row += 1) {
    const stamp = seconds[row] ?? NaN
    const line = grid.lines[row] ?? 0
    if (Number.isNaN(stamp)) {
      repairs.add('no-time', null, line)
      continue
    }
    const before = rows[count - 1]
    if (
      before !== undefined &&
      seconds[count - 1] === stamp &&
      !breaks.has(row) &&
      join(channels, before, row)
    ) {
      repairs.add('merged', null, line)
      continue
    }
    rows[count] = row
    seconds[count] = stamp
    count += 1
  }
  return { rows, seconds, count, step: medianPositiveStep(seconds.subarray(0, Math.min(count, lookedAt))) }
}

/** Moves a row's cells into an earlier one, unless both have one of a channel, or one has none at all. */
function join(channels: readonly GridColumn[], earlier: number, row: number): boolean {
  if (channels.some((column) => column.isFilled(earlier) && column.isFilled(row))) return false
  const filled = (one: number) => channels.some((column) => column.isFilled(one))
  if (!filled(earlier) || !filled(row)) return false
  for (const column of channels) {
    if (column.isFilled(row)) column.values[earlier] = column.values[row] ?? NaN
  }
  return true
}

/** Steps that decide whether stamps are coarse. */
const stepsLookedAt = 1_000

/**
 * Spreads rows of one stamp evenly to the next stamp, where more than half of the steps are zero: a recorder that is
 * faster than its clock. Over the usual step where the next stamp is further than two of it, or back.
 *
 * *Source:* assumption: such a recorder is steady within one stamp.
 */
export function spreadCoarse(grid: Grid, timed: TimedRows, repairs: Repairs): void {
  const { rows, seconds, count, step } = timed
  const looked = Math.min(count - 1, stepsLookedAt)
  let zeros = 0
  for (let place = 1; place <= looked; place += 1) if (seconds[place] === seconds[place - 1]) zeros += 1
  if (!(2 * zeros > looked) || Number.isNaN(step)) return
  for (let from = 0; from < count;) {
    const stamp = seconds[from] ?? NaN
    let to = from + 1
    while (to < count && seconds[to] === stamp) to += 1
    const next = to < count ? (seconds[to] ?? NaN) - stamp : NaN
    const over = next >= 0 && next <= 2 * step ? next : step
    for (let place = from + 1; place < to; place += 1) {
      seconds[place] = stamp + (over * (place - from)) / (to - from)
      repairs.add('coarse-time', 'time', grid.lines[rows[place] ?? 0] ?? 0)
    }
    from = to
  }
}
