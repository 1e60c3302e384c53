import { failed, succeeded, type Result } from '../../mistakes/mistake.ts'
import {
  channelRows,
  inChannelUnit,
  logUnits,
  type ChannelId,
  type ChannelRow,
  type LogUnit,
} from '../../reference/columns.ts'
import type { LogModel } from '../model.ts'
import { rankOf } from '../order-statistics.ts'
import { refusal } from '../refusal.ts'
import type { Grid, GridColumn } from '../text/grid.ts'
import { foldedName } from '../text/heading.ts'
import type { ColumnChoice, ColumnsChoice } from './choice.ts'
import { isWithin, rangeOf } from './ranges.ts'
import { defaultUnitOf } from './units.ts'
import { classesOf, scoreOf } from './words.ts'

/** A column with a meaning. */
export interface AssignedColumn {
  /** Place in the file, from 0. */
  readonly place: number
  readonly column: GridColumn
  readonly channel: ChannelId
  /** Null for times and words, and for a speed whose unit is judged by the rpm. */
  readonly unit: LogUnit | null
  /** Whether a person, the heading or the cells say the unit; else it is the usual one. */
  readonly isUnitSaid: boolean
  /** What a person laid down: value = read · factor + offset, in that unit. */
  readonly factor: number
  readonly offset: number
}

interface Candidate {
  readonly place: number
  readonly rank: number
  readonly score: number
  readonly row: ChannelRow
}

/**
 * Gives columns their channels: first what a person laid down, then by names, the best score first.
 *
 * A channel whose numbers the machine cannot have is refused; volts that fit a cell are cell volts.
 *
 * @returns by place in the file, or the mistakes of the choice
 * *Source:* words and classes in `reference/columns.json`; common practice, no source.
 */
export function assignColumns(
  grid: Grid,
  choice: ColumnsChoice,
  model: LogModel,
): Result<readonly AssignedColumn[]> {
  const laidDown = choicesByPlace(grid, choice)
  if (!laidDown.ok) return laidDown
  const assigned = new Map<ChannelId, AssignedColumn>()
  const taken = new Set<number>()
  for (const [place, one] of laidDown.value) {
    if (one.channel === undefined) continue
    taken.add(place)
    if (one.channel === null) continue
    const column = columnWith(grid, place, one, one.channel)
    if (assigned.has(one.channel)) {
      return failed([
        refusal('columns', { path: 'columns', value: `two columns of the channel ${one.channel}` }),
      ])
    }
    assigned.set(one.channel, column)
  }
  for (const { place, row } of candidatesOf(grid, laidDown.value)) {
    if (taken.has(place) || assigned.has(row.id)) continue
    const column = columnWith(grid, place, laidDown.value.get(place) ?? {}, row.id)
    const fitting = fittingChannel(column, grid.count, model)
    if (fitting === null || assigned.has(fitting.channel)) continue
    assigned.set(fitting.channel, fitting)
    taken.add(place)
  }
  return succeeded([...assigned.values()].sort((one, other) => one.place - other.place))
}

/** The person's choices by place; a key is a heading, else a number from 1. */
function choicesByPlace(
  grid: Grid,
  { columns = {} }: ColumnsChoice,
): Result<ReadonlyMap<number, ColumnChoice>> {
  const found = new Map<number, ColumnChoice>()
  for (const [key, one] of Object.entries(columns)) {
    let place = grid.columns.findIndex(({ name }) => foldedName(name) === foldedName(key))
    if (place === -1 && /^\d+$/.test(key)) place = Number(key) - 1
    if (grid.columns[place] === undefined) {
      const allowed = `headings of the log, or numbers from 1 to ${grid.columns.length}`
      return failed([refusal('columns', { path: `columns.${key}`, value: 'no column of the log', allowed })])
    }
    found.set(place, one)
  }
  return succeeded(found)
}

function candidatesOf(grid: Grid, laidDown: ReadonlyMap<number, ColumnChoice>): readonly Candidate[] {
  const candidates: Candidate[] = []
  grid.columns.forEach(({ name, unit: own, cellUnit }, place) => {
    const unit = unitNamed(laidDown.get(place)?.unit) ?? own ?? logUnits.get(cellUnit) ?? null
    const classes = classesOf(name, unit)
    channelRows.forEach((row, rank) => {
      const score = scoreOf(row, classes, unit)
      if (score > 0) candidates.push({ place, rank, score, row })
    })
  })
  return candidates.sort(
    (one, other) => other.score - one.score || one.place - other.place || one.rank - other.rank,
  )
}

const unitNamed = (key: string | undefined) => (key === undefined ? undefined : logUnits.get(key))

function columnWith(grid: Grid, place: number, one: ColumnChoice, channel: ChannelId): AssignedColumn {
  const column = grid.columns[place] as GridColumn
  const kind = channelRows.find(({ id }) => id === channel)?.kind ?? null
  const written = [unitNamed(one.unit), column.unit, logUnits.get(column.cellUnit)].find(
    (unit) => unit !== undefined && unit !== null && unit.kind === kind,
  )
  const numbers = () => column.firstNumbers(grid.count)
  const unit = written ?? defaultUnitOf(channel, numbers)
  const isUnitSaid = written !== undefined && written !== null
  return { place, column, channel, unit, isUnitSaid, factor: one.factor ?? 1, offset: one.offset ?? 0 }
}

const judgedLater: readonly ChannelId[] = ['time', 'date', 'event', 'rpm', 'erpm', 'wheelRpm']

/** The column under its channel, under cell volts, or null where the machine cannot have its numbers. */
function fittingChannel(column: AssignedColumn, count: number, model: LogModel): AssignedColumn | null {
  if (judgedLater.includes(column.channel) || column.unit === null) return column
  const high = rankOf(column.column.firstNumbers(count), 0.95)
  if (Number.isNaN(high)) return column
  const value = asChosen(column, high)
  const fits = (channel: ChannelId) => {
    const range = rangeOf(channel, model)
    return range !== null && isWithin(range, value)
  }
  if (fits(column.channel)) return column
  return column.channel === 'volts' && fits('cellVolts') ? { ...column, channel: 'cellVolts' } : null
}

/** A number of the file as its column's choice has it, in the channel's unit. */
function asChosen({ unit, factor, offset }: AssignedColumn, value: number): number {
  return inChannelUnit(value * factor + offset, unit)
}
