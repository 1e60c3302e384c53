import { inChannelUnit, type ChannelId, type LogUnit } from '../reference/columns.ts'
import type { AssignedColumn } from './columns/assign.ts'
import { Channel } from './channel.ts'
import type { InPieces } from './pieces.ts'
import type { Timeline } from './time/timeline.ts'

/** A log as channels over its rows. */
export interface LogData {
  readonly timeline: Timeline
  /** By channel; the one that gives the motor's rpm stands under `rpm`. */
  readonly channels: ReadonlyMap<ChannelId, Channel>
  /** Units of the channels whose numbers are still as the file has them: the rpm and the counters. */
  readonly rawUnits: ReadonlyMap<ChannelId, LogUnit>
}

/** Channels that count up: a recorder may begin them anew. */
export const counters: readonly ChannelId[] = ['charge', 'energy']
/** Columns that may give the motor's rpm, best first. */
export const rpmSources: readonly ChannelId[] = ['rpm', 'erpm', 'wheelRpm']

const wordless: readonly ChannelId[] = ['time', 'date', 'event']

/**
 * Takes the kept rows of the columns with a meaning, in the channels' units. Rpm and counters stay as the file has them
 * until what depends on the raw number is repaired.
 *
 * @param columns they give their numbers away
 * @param rows rows of the grid that were kept, rising, the first `timeline.count` of them
 * @param read rows of the grid
 */
export function* dataOf(
  columns: readonly AssignedColumn[],
  rpmSource: ChannelId | null,
  timeline: Timeline,
  rows: Int32Array,
  read: number,
): InPieces<LogData> {
  const channels = new Map<ChannelId, Channel>()
  const rawUnits = new Map<ChannelId, LogUnit>()
  for (const column of columns) {
    const isRpm = rpmSources.includes(column.channel)
    if (wordless.includes(column.channel) || (isRpm && column.channel !== rpmSource)) continue
    const id = isRpm ? 'rpm' : column.channel
    const raw = isRpm || counters.includes(id)
    if (raw && column.unit !== null) rawUnits.set(id, column.unit)
    const channel = new Channel(id, keptValues(column, rows, timeline.count, read, raw), timeline)
    channel.index()
    channels.set(id, channel)
    yield
  }
  return { timeline, channels, rawUnits }
}

/** A column's kept rows, brought to their unit where they stand: no kept row is behind its place in the file. */
function keptValues(
  { column, factor, offset, unit }: AssignedColumn,
  rows: Int32Array,
  count: number,
  read: number,
  raw: boolean,
): Float64Array {
  const written = raw ? null : unit
  const values = column.taken(read)
  for (let place = 0; place < count; place += 1) {
    const value = values[rows[place] ?? 0] ?? NaN
    values[place] = Number.isFinite(value) ? inChannelUnit(value * factor + offset, written) : value
  }
  return values.subarray(0, count)
}

/**
 * The log without channels that hold no sample: a column that a recorder heads and never fills, as where a sensor is not
 * plugged in, or of which nothing could stand, is no reading. What depends on it takes the next best.
 */
export function onlySampled(data: LogData): LogData {
  const channels = new Map([...data.channels].filter(([, { samples }]) => samples.length > 0))
  return channels.size === data.channels.size ? data : { ...data, channels }
}

/** Indexes every channel anew. */
export function indexAll(data: LogData): void {
  for (const channel of data.channels.values()) channel.index()
}
