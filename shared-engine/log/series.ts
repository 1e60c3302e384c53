import type { ChannelId } from '../reference/columns.ts'
import { groundSpeedOfRpm } from '../vehicle/logged-speed.ts'
import type { Channel } from './channel.ts'
import { currentsOf, type Currents } from './derive/current.ts'
import { loadCourseOf } from './derive/load-course.ts'
import { trackOnUntil } from './facts/facts.ts'
import type { Episode } from './episodes/episode.ts'
import { PointKeeper } from './point-keeper.ts'
import type { ReadLog } from './read.ts'

/** What is drawn of a log: its channels, and what follows from them. */
export type SeriesId = ChannelId | 'oneMotorAmps' | 'driveAmps' | 'speedByRpm' | 'toothN' | 'tensionN'

/** A quantity over the time of one segment, in the channel's unit; null where two samples are not to be joined. */
export interface LogSeries {
  readonly id: SeriesId
  /** From 1. */
  readonly segment: number
  /** s in the segment, rising. */
  readonly seconds: readonly number[]
  readonly values: readonly (number | null)[]
  /** Half of what one step of the recorder stands for: the value lies within ± this; 0 where the log has it itself. */
  readonly within: number
  /** Least and most at each moment, where only a range is known. */
  readonly range?: {
    readonly low: readonly (number | null)[]
    readonly high: readonly (number | null)[]
  }
}

const drawn: readonly ChannelId[] = [
  'rpm',
  'volts',
  'cellVolts',
  'amps',
  'motorAmps',
  'speed',
  'motorC',
  'controllerC',
  'coolantC',
  'throttle',
  'duty',
]

/** What a series is at a place among its samples; NaN where there is nothing. */
type ValueAt = (place: number, row: number) => number

/**
 * The series of a log, segment by segment: channels as they were repaired, the currents that are worked out where none is
 * logged, and the ground speed that the rpm gives while the track was on.
 *
 * Samples further apart than the channel's reach are parted by a null half-way. Of a long segment no more points are kept
 * than a screen can show: no peak is lost.
 *
 * @param episodes of the same log
 */
export function* seriesOf(log: ReadLog, episodes: readonly Episode[]): Generator<LogSeries, void> {
  const { data, model } = log
  for (const id of drawn) {
    const channel = data.channels.get(id)
    if (channel !== undefined) yield* parted(channel, id, (_, row) => channel.values[row] ?? NaN)
  }
  const rpm = data.channels.get('rpm')
  if (rpm === undefined) return
  const currents = currentsOf(data, model)
  const until = trackOnUntil(episodes)
  const { t, segmentOf } = data.timeline
  const half = Number.isFinite(currents.sagStep) ? currents.sagStep / 2 : 0
  if (currents.source === 'sag') yield* parted(rpm, 'driveAmps', (place) => currents.pack[place] ?? NaN, half)
  if (currents.source !== null && currents.source !== 'motorAmps')
    yield* parted(rpm, 'oneMotorAmps', (place) => currents.motor[place] ?? NaN)
  yield* forcesOf(log, rpm, currents, half, until)
  if (!data.channels.has('speed'))
    yield* parted(rpm, 'speedByRpm', (_, row) =>
      (t[row] ?? 0) > until(segmentOf[row] ?? 0)
        ? NaN
        : groundSpeedOfRpm(model.machine, rpm.values[row] ?? NaN, model.slip),
    )
}

/**
 * Force on the most loaded tooth and tension of a loop through a log, while the load is there; as ranges where the current
 * is told in steps.
 */
function* forcesOf(
  log: ReadLog,
  rpm: Channel,
  currents: Currents,
  half: number,
  until: (segment: number) => number,
): Generator<LogSeries, void> {
  if (currents.source === null) return
  const [middle, low, high] = (half === 0 ? [0] : [0, -half, half]).map((aside) =>
    loadCourseOf(log, currents, until, aside),
  )
  if (middle === undefined) return
  for (const [id, of] of [
    ['toothN', 'tooth'],
    ['tensionN', 'tension'],
  ] as const) {
    const ranged = low === undefined || high === undefined ? null : ([low[of], high[of]] as const)
    yield* parted(rpm, id, (place) => middle[of][place] ?? NaN, 0, ranged)
  }
}

/**
 * The finite samples of each segment, with a null between two that lie too far apart.
 *
 * @param ranged least and most by place among the samples
 */
function* parted(
  { samples, timeline, reach }: Channel,
  id: SeriesId,
  valueAt: ValueAt,
  within = 0,
  ranged: readonly [low: Float64Array, high: Float64Array] | null = null,
): Generator<LogSeries, void> {
  const { t, segments } = timeline
  let place = 0
  for (const [at, { first, end }] of segments.entries()) {
    const keeper = new PointKeeper(end - first, t[end - 1] ?? 0, reach, ranged !== null)
    for (; place < samples.length && (samples[place] ?? 0) < end; place += 1) {
      const row = samples[place] ?? 0
      const value = valueAt(place, row)
      if (Number.isFinite(value)) keeper.add(t[row] ?? 0, value, ranged?.[0][place], ranged?.[1][place])
    }
    keeper.end()
    const { seconds, values, range } = keeper
    if (seconds.length === 0) continue
    yield { id, segment: at + 1, seconds, values, within, ...(range === null ? {} : { range }) }
  }
}
