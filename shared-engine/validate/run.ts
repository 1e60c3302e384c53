import { fitLogOf } from '../fit/from-log.ts'
import { cutInAir, type InAir } from '../fit/in-air.ts'
import { channelNames, type ChannelName, type Column, type FitLog, type Segment } from '../fit/log.ts'
import { currentsOf, type AmpsSource } from '../log/derive/current.ts'
import type { Episode } from '../log/episodes/episode.ts'
import type { ReadLog } from '../log/read.ts'

/** Where the current of one motor comes from: logged, or worked out by the build. */
type AmpsFrom = AmpsSource | null

/** A run as a build is compared with it. */
export interface Run {
  readonly log: FitLog
  /** Where the motor's current comes from; null: the log has none. */
  readonly ampsFrom: AmpsFrom
  /** Whether the throttle stands for the duty, which the log does not have. */
  readonly throttleAsDuty: boolean
  /** Seconds left out because the model is of a machine whose track holds: spun, jammed, or the load gone. */
  readonly leftOutSeconds: number
}

/** Rows that a run is averaged down to: more would cost time and tell no more. */
const mostRows = 20_000

/** What a machine whose track grips and turns does not do. */
const leftOut: ReadonlySet<string> = new Set(['spin', 'load-lost', 'jam', 'stall', 'cut-off'])

/** A run of channels as they are. */
export function runOfChannels(log: FitLog): Run {
  const has = (name: ChannelName) =>
    log.segments.some(({ channels }) => channels[name]?.some((value) => value !== null) === true)
  const ampsFrom = has('motorAmps') ? 'motorAmps' : has('packAmps') && has('duty') ? 'amps+duty' : null
  return { log: averaged(log), ampsFrom, throttleAsDuty: false, leftOutSeconds: 0 }
}

/**
 * A run of a log that was read: its channels, the motor's current worked out where none is logged, and what the model is
 * not of left out.
 *
 * @param inAir stretches that were driven with the loops in the air
 */
export function runOfLog(read: ReadLog, episodes: readonly Episode[], inAir: readonly InAir[] = []): Run {
  const { data, model } = read
  const currents = currentsOf(data, model)
  const plain = fitLogOf(read)
  const hasDuty = data.channels.has('duty')
  const throttle = hasDuty ? undefined : data.channels.get('throttle')?.values
  const rpm = data.channels.get('rpm')?.samples ?? new Int32Array()
  const worksOut =
    currents.source === 'amps' || currents.source === 'sag' || (currents.source === 'amps+duty' && !hasDuty)
  const amps = new Float64Array(data.timeline.count).fill(NaN)
  if (worksOut) rpm.forEach((row, place) => (amps[row] = currents.motor[place] ?? NaN))
  let seconds = 0
  const segments = plain.segments.map((segment, at): Segment => {
    const { first = 0, end = 0 } = data.timeline.segments[at] ?? {}
    const columnOf = (values: Float64Array): Column =>
      Array.from(values.subarray(first, end), (value) => (Number.isFinite(value) ? value : null))
    const stretches = episodes
      .filter((one) => leftOut.has(one.kind) && one.segment === at + 1)
      .map(
        (one) =>
          [
            one.startAfter ?? one.start,
            one.kind === 'load-lost' ? Infinity : (one.spunUntil ?? one.endBefore ?? one.end),
          ] as const,
      )
    const gone = (time: number) => stretches.some(([from, to]) => time >= from && time <= to)
    segment.seconds.forEach((time, row) => {
      if (row > 0 && gone(time)) seconds += time - (segment.seconds[row - 1] ?? time)
    })
    const channels: Partial<Record<ChannelName, Column>> = { ...segment.channels }
    if (worksOut) channels.motorAmps = columnOf(amps)
    if (throttle !== undefined) channels.duty = columnOf(throttle)
    if (channels.motorRpm !== undefined)
      channels.motorRpm = channels.motorRpm.map((value, row) =>
        gone(segment.seconds[row] ?? 0) ? null : value,
      )
    return { ...segment, channels }
  })
  return {
    log: averaged(cutInAir({ segments, noise: {} }, inAir)),
    ampsFrom: currents.source,
    throttleAsDuty: throttle !== undefined,
    leftOutSeconds: seconds,
  }
}

/** A long log as means over equal numbers of rows, so that it has no more than {@link mostRows}. */
export function averaged(log: FitLog): FitLog {
  const rows = log.segments.reduce((sum, { seconds }) => sum + seconds.length, 0)
  const each = Math.ceil(rows / mostRows)
  if (each <= 1) return log
  const segments = log.segments.map(({ seconds, channels, ...segment }): Segment => {
    const over = (column: Column): Column =>
      Array.from({ length: Math.ceil(seconds.length / each) }, (_, bin) => {
        const known = column.slice(bin * each, (bin + 1) * each).filter((value) => value !== null)
        return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length
      })
    const means = channelNames.flatMap((name) => {
      const column = channels[name]
      return column === undefined ? [] : [[name, over(column)] as const]
    })
    return {
      ...segment,
      seconds: over(seconds).map((value) => value ?? 0),
      channels: Object.fromEntries(means),
    }
  })
  return { ...log, segments }
}
