import type { ChannelId } from '../reference/columns.ts'
import { groundSpeedOfRpm } from '../vehicle/logged-speed.ts'
import { Currents } from './derive/current.ts'
import { loadCourseOf, type LoadCourse } from './derive/load-course.ts'
import { trackOnUntil } from './facts/facts.ts'
import type { Episode } from './episodes/episode.ts'
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

/**
 * The series of a log, segment by segment: channels as they were repaired, the currents that are worked out where none is
 * logged, and the ground speed that the rpm gives while the track was on.
 *
 * They come one by one, so that of a long log each can be thinned before the next is made. Samples further apart than the
 * channel's reach are parted by a null half-way.
 *
 * @param episodes of the same log
 */
export function* seriesOf(log: ReadLog, episodes: readonly Episode[]): Generator<LogSeries, void> {
  const { data, model } = log
  for (const id of drawn) {
    const channel = data.channels.get(id)
    if (channel !== undefined) yield* parted(log, id, channel.samples, channel.values, channel.reach)
  }
  const rpm = data.channels.get('rpm')
  if (rpm === undefined) return
  const currents = new Currents(data, model)
  const until = trackOnUntil(episodes)
  const { t, segmentOf, count } = data.timeline
  const byRow = (valueAt: (row: number, place: number) => number) => {
    const values = new Float64Array(count).fill(NaN)
    rpm.samples.forEach((row, place) => (values[row] = valueAt(row, place)))
    return values
  }
  const derived = (id: SeriesId, values: Float64Array, within = 0) =>
    parted(log, id, rpm.samples, values, rpm.reach, within)
  const hasSpeed = data.channels.has('speed')
  const half = Number.isFinite(currents.sagStep) ? currents.sagStep / 2 : 0
  if (currents.source === 'sag')
    yield* derived(
      'driveAmps',
      byRow((_, place) => currents.pack[place] ?? NaN),
      half,
    )
  if (currents.source !== null && currents.source !== 'motorAmps')
    yield* derived(
      'oneMotorAmps',
      byRow((_, place) => currents.motor[place] ?? NaN),
    )
  yield* forcesOf(log, currents, half, until)
  if (!hasSpeed)
    yield* derived(
      'speedByRpm',
      byRow((row) =>
        (t[row] ?? 0) > until(segmentOf[row] ?? 0)
          ? NaN
          : groundSpeedOfRpm(model.machine, rpm.values[row] ?? NaN, model.slip),
      ),
    )
}

/**
 * Force on the most loaded tooth and tension of a loop through a log, while the load is there; as ranges where the current
 * is told in steps.
 */
function forcesOf(
  log: ReadLog,
  currents: Currents,
  half: number,
  until: (segment: number) => number,
): readonly LogSeries[] {
  const rpm = log.data.channels.get('rpm')
  if (rpm === undefined || currents.source === null) return []
  const courses = (half === 0 ? [0] : [0, -half, half]).map((aside) =>
    loadCourseOf(log, currents, until, aside),
  )
  const ranged = (id: SeriesId, of: (course: LoadCourse) => Float64Array) => {
    const [middle = [], low = [], high = []] = courses.map((course) => {
      const values = new Float64Array(log.data.timeline.count).fill(NaN)
      rpm.samples.forEach((row, place) => (values[row] = of(course)[place] ?? NaN))
      return parted(log, id, rpm.samples, values, rpm.reach)
    })
    if (half === 0) return middle
    return middle.map((one, at) => ({
      ...one,
      range: { low: low[at]?.values ?? [], high: high[at]?.values ?? [] },
    }))
  }
  return [...ranged('toothN', ({ tooth }) => tooth), ...ranged('tensionN', ({ tension }) => tension)]
}

/** The finite samples of each segment, with a null between two that lie too far apart. */
function parted(
  { data }: ReadLog,
  id: SeriesId,
  samples: Int32Array,
  values: Float64Array,
  reach: number,
  within = 0,
): readonly LogSeries[] {
  const { t, segmentOf } = data.timeline
  const found = new Map<number, { seconds: number[]; values: (number | null)[] }>()
  for (const row of samples) {
    const value = values[row] ?? NaN
    if (!Number.isFinite(value)) continue
    const segment = (segmentOf[row] ?? 0) + 1
    const series = found.get(segment) ?? { seconds: [], values: [] }
    found.set(segment, series)
    const now = t[row] ?? 0
    const before = series.seconds.at(-1)
    if (before !== undefined && now - before > reach) {
      series.seconds.push((now + before) / 2)
      series.values.push(null)
    }
    series.seconds.push(now)
    series.values.push(value)
  }
  return [...found].map(([segment, series]) => ({ id, segment, ...series, within }))
}
