import type { Build } from '../entries/schema.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import type { ChannelId } from '../reference/columns.ts'
import { assignColumns, type AssignedColumn } from './columns/assign.ts'
import type { ColumnsChoice } from './columns/choice.ts'
import { judgeRpm, type JudgedRpm } from './columns/rpm-scale.ts'
import { settleSpeed } from './columns/speed-unit.ts'
import { dataOf, onlySampled, rpmSources, type LogData } from './data.ts'
import { logModelOf, type LogModel } from './model.ts'
import type { InPieces } from './pieces.ts'
import { refusal } from './refusal.ts'
import { repairValues } from './repair/all.ts'
import { spreadCoarse, timedRowsOf } from './time/spread.ts'
import { stampsOf, steadyStamps, type Stamps } from './time/stamps.ts'
import { timelineOf } from './time/timeline.ts'
import type { LogText } from './text/reader.ts'

/** A log read and repaired: what everything else is made of. */
export interface ReadLog {
  readonly model: LogModel
  readonly text: LogText
  readonly columns: readonly AssignedColumn[]
  readonly stamps: Stamps
  readonly data: LogData
  /** Null without a column of rpm. */
  readonly rpm: JudgedRpm | null
  readonly frozenRows: readonly number[]
  readonly zeroRows: readonly number[]
}

/** Gives a log's text its meaning: columns, time, rpm scale, repairs. */
export function* readLog(text: LogText, build: Build, choice: ColumnsChoice): InPieces<Result<ReadLog>> {
  const model = logModelOf(build)
  const { grid, repairs } = text
  const assigned = assignColumns(grid, choice, model)
  if (!assigned.ok) return assigned
  yield
  const named = (id: ChannelId) => assigned.value.find(({ channel }) => channel === id) ?? null
  const stamps =
    choice.rate === undefined
      ? stampsOf(grid, named('time'), named('date'), repairs)
      : steadyStamps(grid.count, choice.rate)
  if (stamps === null) return failed([refusal('no-time')])
  yield
  const columns = assigned.value.filter(({ channel, place }) => channel !== 'time' && place !== stamps.place)
  const timed = timedRowsOf(
    grid,
    stamps.seconds,
    // A date beside a clock is part of the stamp: every row has it.
    columns.flatMap(({ channel, column }) => (channel === 'date' ? [] : [column])),
    repairs,
  )
  spreadCoarse(grid, timed, repairs)
  if (timed.count === 0) return failed([refusal('no-time')])
  yield
  const timeline = timelineOf(grid, timed, stamps.form, repairs)
  yield
  const source = rpmSourceOf(named, grid.count)
  const read = yield* dataOf(columns, source, timeline, timed.rows, grid.count)
  // From here on the log is its channels: of a long one the grid would be as much once more.
  for (const column of grid.columns) column.letGo(grid.count)
  const unitTimes = read.rawUnits.get('rpm')?.times ?? 1
  const rpm = source === null ? null : judgeRpm(onlySampled(read), model, source, unitTimes, choice.rpmFactor)
  yield
  const speed = named('speed')
  const speedUnit =
    speed?.unit === null ? settleSpeed(read, model, unitTimes * (rpm?.reading.factor ?? NaN)) : null
  const frozenRows: number[] = []
  const zeroRows: number[] = []
  const task = {
    data: read,
    model,
    repairs,
    rpmFactor: unitTimes * (rpm?.reading.factor ?? 1),
    rpmRescaled: rpm?.changed ?? false,
    zeroRows,
    frozenRows,
  }
  yield* repairValues(task, choice.asLogged)
  const data = onlySampled(read)
  const mistakes = emptinessOf(data)
  if (mistakes !== null) return failed([mistakes])
  const settled = assigned.value.map((column) =>
    column.channel === 'speed' && speedUnit !== null ? { ...column, unit: speedUnit } : column,
  )
  return succeeded({ model, text, columns: settled, stamps, data, rpm, frozenRows, zeroRows })
}

function emptinessOf({ channels }: LogData): Mistake | null {
  return channels.size > 0 ? null : refusal('no-values')
}

/** The column that gives the motor's rpm: the best that has a number, else the best. */
function rpmSourceOf(
  named: (id: ChannelId) => AssignedColumn | null,
  rows: number,
): (typeof rpmSources)[number] | null {
  const found = rpmSources.filter((id) => named(id) !== null)
  const filled = found.find((id) => (named(id)?.column.firstNumbers(rows) ?? []).length > 0)
  return filled ?? found[0] ?? null
}
