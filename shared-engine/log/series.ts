import type { ChannelId } from '../reference/columns.ts'
import { groundSpeedOfRpm } from '../vehicle/logged-speed.ts'
import type { Channel } from './channel.ts'
import { currentsOf, type Currents } from './derive/current.ts'
import { loadCourseOf } from './derive/load-course.ts'
import { trackOnUntil } from './facts/facts.ts'
import type { Episode } from './episodes/episode.ts'
import { extremesOf, type Extremes } from './extremes.ts'
import { firstFrom } from './first-from.ts'
import { mapped } from './mapped.ts'
import type { ReadLog } from './read.ts'
import type { Timeline } from './time/timeline.ts'

/** What is drawn of a log: its channels, and what follows from them. */
export type SeriesId = ChannelId | 'oneMotorAmps' | 'driveAmps' | 'speedByRpm' | 'toothN' | 'tensionN'

/**
 * A quantity over the time of one segment, every sample of it, in the channel's unit; made to be handed from one thread to
 * another without a copy.
 */
export interface LogSeries {
  readonly id: SeriesId
  /** From 1. */
  readonly segment: number
  /** s in the segment, rising; the same list for all series that have their moments in common. */
  readonly seconds: Float64Array
  /** NaN where two samples are not to be joined, half-way between them. */
  readonly values: Float64Array
  /** Places of those, rising. */
  readonly gaps: Uint32Array
  readonly least: Extremes
  readonly greatest: Extremes
  /** Half of what one step of the recorder stands for: the value lies within ± this; 0 where the log has it itself. */
  readonly within: number
  /** Least and most at each moment, where only a range is known. */
  readonly range: {
    readonly low: Float64Array
    readonly high: Float64Array
    readonly least: Extremes
    readonly greatest: Extremes
  } | null
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

/** Values by row of the log, or by place among a channel's samples; NaN where there is nothing. */
interface Values {
  readonly by: 'row' | 'place'
  readonly of: Float64Array
}

/**
 * The series of a log, segment by segment: channels as they were repaired, the currents that are worked out where none is
 * logged, and the ground speed that the rpm gives while the track was on.
 *
 * Samples further apart than the channel's reach are parted half-way. Lists of the log itself are handed on where they can
 * stay as they are: whoever gives a series away gives the log away with it.
 *
 * @param episodes of the same log
 */
export function* seriesOf(log: ReadLog, episodes: readonly Episode[]): Generator<LogSeries, void> {
  const { data, model } = log
  for (const id of drawn) {
    const channel = data.channels.get(id)
    if (channel !== undefined) yield* parted(channel, id, { by: 'row', of: channel.values })
  }
  const rpm = data.channels.get('rpm')
  if (rpm === undefined) return
  const currents = currentsOf(data, model)
  const until = trackOnUntil(episodes)
  const { t, segmentOf } = data.timeline
  const half = Number.isFinite(currents.sagStep) ? currents.sagStep / 2 : 0
  if (currents.source === 'sag') yield* parted(rpm, 'driveAmps', { by: 'place', of: currents.pack }, half)
  if (currents.source !== null && currents.source !== 'motorAmps')
    yield* parted(rpm, 'oneMotorAmps', { by: 'place', of: currents.motor })
  yield* forcesOf(log, rpm, currents, half, until)
  if (data.channels.has('speed')) return
  const speed = mapped(rpm.samples, (row) =>
    (t[row] ?? 0) > until(segmentOf[row] ?? 0)
      ? NaN
      : groundSpeedOfRpm(model.machine, rpm.values[row] ?? NaN, model.slip),
  )
  yield* parted(rpm, 'speedByRpm', { by: 'place', of: speed })
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
    yield* parted(rpm, id, { by: 'place', of: middle[of] }, 0, ranged)
  }
}

const secondsKnown = new WeakMap<Timeline, Map<number, Float64Array>>()

/** Moments of all rows of a segment: one list for all series that have a sample in each. */
function wholeSeconds(timeline: Timeline, first: number, end: number): Float64Array {
  const known = secondsKnown.get(timeline) ?? new Map<number, Float64Array>()
  const seconds = known.get(first) ?? timeline.t.subarray(first, end)
  secondsKnown.set(timeline, known.set(first, seconds))
  return seconds
}

/** Moments and values of a series; least and most where only a range is known. */
interface Lists extends Pick<LogSeries, 'seconds' | 'values'> {
  readonly low: Float64Array | null
  readonly high: Float64Array | null
}

/**
 * The finite samples of each segment, parted where two lie too far apart.
 *
 * @param ranged least and most by place among the samples
 */
function* parted(
  { samples, timeline, reach }: Channel,
  id: SeriesId,
  { by, of }: Values,
  within = 0,
  ranged: readonly [low: Float64Array, high: Float64Array] | null = null,
): Generator<LogSeries, void> {
  const { t, segments } = timeline
  let place = 0
  for (const [at, { first, end }] of segments.entries()) {
    const begun = place
    let [count, parts, before] = [0, 0, NaN]
    for (; place < samples.length && (samples[place] ?? 0) < end; place += 1) {
      const row = samples[place] ?? 0
      if (!Number.isFinite(of[by === 'row' ? row : place])) continue
      const time = t[row] ?? 0
      if (time - before > reach) parts += 1
      before = time
      count += 1
    }
    if (count === 0) continue
    const [low, high] = ranged ?? [null, null]
    const gaps = new Uint32Array(parts)
    let series: Lists
    if (count === end - first && parts === 0) {
      // Every row has its sample: the lists stay as they are.
      const cut = (list: Float64Array | null) => list?.subarray(begun, place) ?? null
      const values = by === 'row' ? of.subarray(first, end) : of.subarray(begun, place)
      series = { seconds: wholeSeconds(timeline, first, end), values, low: cut(low), high: cut(high) }
    } else {
      const room = () => new Float64Array(count + parts).fill(NaN)
      series = { seconds: room(), values: room(), low: low && room(), high: high && room() }
      let [next, gap] = [0, 0]
      before = NaN
      for (let one = begun; one < place; one += 1) {
        const row = samples[one] ?? 0
        const value = of[by === 'row' ? row : one] ?? NaN
        if (!Number.isFinite(value)) continue
        const time = t[row] ?? 0
        if (time - before > reach) {
          series.seconds[next] = (time + before) / 2
          gaps[gap] = next
          gap += 1
          next += 1
        }
        before = time
        series.seconds[next] = time
        series.values[next] = value
        if (series.low !== null) series.low[next] = low?.[one] ?? NaN
        if (series.high !== null) series.high[next] = high?.[one] ?? NaN
        next += 1
      }
    }
    yield seriesFrom(id, at + 1, series, gaps, within)
  }
}

function seriesFrom(
  id: SeriesId,
  segment: number,
  { seconds, values, low, high }: Lists,
  gaps: Uint32Array,
  within: number,
): LogSeries {
  const [least, greatest] = [extremesOf(values, -1), extremesOf(values, 1)]
  const range =
    low === null || high === null
      ? null
      : { low, high, least: extremesOf(low, -1), greatest: extremesOf(high, 1) }
  return { id, segment, seconds, values, gaps, least, greatest, within, range }
}

/** Every buffer of some series, once: what can be handed over instead of copied. */
export function buffersOf(series: readonly LogSeries[]): readonly ArrayBuffer[] {
  const lists = series.flatMap(({ seconds, values, gaps, least, greatest, range }) => [
    seconds,
    values,
    gaps,
    ...least,
    ...greatest,
    ...(range === null ? [] : [range.low, range.high, ...range.least, ...range.greatest]),
  ])
  return [...new Set(lists.map(({ buffer }) => buffer))].filter((one) => one instanceof ArrayBuffer)
}

/** The value of a series at a moment, on the line between its neighbours; NaN where they are parted, and outside. */
export function valueAt({ seconds, values }: LogSeries, moment: number): number {
  const after = firstFrom(seconds, moment)
  const [x1, y1] = [seconds[after] ?? NaN, values[after] ?? NaN]
  if (x1 === moment) return y1
  const [x0, y0] = [seconds[after - 1] ?? NaN, values[after - 1] ?? NaN]
  return y0 + ((y1 - y0) * (moment - x0)) / (x1 - x0)
}
