import type { Pattern } from '../drive/drive.ts'
import { plainRow } from '../drive/rows.ts'
import type { PatternRowPart } from '../machine/parts.ts'
import { groundSpeedOfRpm } from '../vehicle/logged-speed.ts'
import type { Episode } from './episodes/episode.ts'
import { trackOnUntil } from './facts/facts.ts'
import type { ReadLog } from './read.ts'

/** Samples of a run's ground speed, its segments one behind the other. */
interface Moving {
  readonly seconds: Float64Array
  /** m/s. */
  readonly speed: Float64Array
}

/** Most rows that a build keeps of a drive. */
const mostRows = 200
/** Longest row of all but the longest runs, and shortest but for the last, s. *Source:* common practice, no source. */
const usuallyLongest = 120
const shortest = 1
/** s that a row of a build lasts at least. *Source:* `docs/model.md` §1. */
const leastSeconds = 0.01
/** A row holds one speed to within this share of the fastest, to begin with. *Source:* common practice, no source. */
const closely = 0.05

/** Time and speed of a run, its segments one behind the other, up to where the load went. */
function movingOf({ data, model }: ReadLog, episodes: readonly Episode[]): Moving {
  const rpm = data.channels.get('rpm')
  const until = trackOnUntil(episodes)
  const { t, segmentOf } = data.timeline
  const samples = rpm?.samples ?? new Int32Array()
  const [seconds, speed] = [new Float64Array(samples.length), new Float64Array(samples.length)]
  let [count, before, segment, now] = [0, NaN, -1, 0]
  for (const row of samples) {
    const time = t[row] ?? 0
    const here = segmentOf[row] ?? 0
    if (time > until(here)) continue
    now += here === segment ? time - before : 0
    ;[before, segment] = [time, here]
    seconds[count] = now
    speed[count] = Math.max(0, groundSpeedOfRpm(model.machine, rpm?.values[row] ?? 0, model.slip))
    count += 1
  }
  return { seconds: seconds.subarray(0, count), speed: speed.subarray(0, count) }
}

/** Mean speed between two places, by the trapezoid: what is driven goes as far as what was. */
function meanSpeed({ seconds, speed }: Moving, from: number, to: number): number {
  let metres = 0
  for (let at = from + 1; at <= to; at += 1)
    metres += (((seconds[at] ?? 0) - (seconds[at - 1] ?? 0)) * ((speed[at - 1] ?? 0) + (speed[at] ?? 0))) / 2
  const lasted = (seconds[to] ?? 0) - (seconds[from] ?? 0)
  return lasted > 0 ? metres / lasted : 0
}

/** How closely a row holds one speed, m/s, and how long it may be, s. */
interface Grain {
  readonly near: number
  readonly longest: number
}

/**
 * Rows that hold one speed each to within so many m/s; null where they are more than a build keeps.
 *
 * A row ends at the last sample that it fits, so that a cruise is not slowed by the stop after it; but none is shorter than a
 * second, and between two samples there is no end.
 */
function rowsWithin(moving: Moving, { near, longest }: Grain): readonly PatternRowPart[] | null {
  const { seconds, speed } = moving
  const rows: PatternRowPart[] = []
  let [from, before] = [0, 0]
  let [least, most] = [Infinity, -Infinity]
  const lastedTo = (place: number) => (seconds[place] ?? 0) - (seconds[from] ?? 0)
  const take = (place: number) => {
    const now = speed[place] ?? 0
    if (now < least) least = now
    if (now > most) most = now
  }
  const close = (to: number) => {
    const lasted = lastedTo(to)
    if (lasted > 0) rows.push(plainRow('speed', meanSpeed(moving, from, to), lasted))
    before = from
    from = to
    least = most = speed[to] ?? 0
  }
  for (let at = 0; at < seconds.length; at += 1) {
    take(at)
    if (most - least <= 2 * near && lastedTo(at) <= longest) continue
    if (lastedTo(at - 1) >= shortest) {
      close(at - 1)
      take(at)
    }
    const fits = most - least <= 2 * near && lastedTo(at) <= longest
    if (!fits && lastedTo(at) >= shortest) close(at)
    if (rows.length > mostRows) return null
  }
  const last = seconds.length - 1
  // What is left may be shorter than a row of a build can be: the row before it ends later then.
  if (lastedTo(last) > 0 && lastedTo(last) < leastSeconds && rows.length > 0) {
    rows.pop()
    from = before
  }
  close(last)
  return rows.length > mostRows ? null : rows
}

/**
 * A run as a drive: rows of held speed by the rpm, of the same length and, row by row, the same distance as the run; on the
 * level, since a log does not know slopes.
 *
 * @returns null where the log has no rpm, or too little of it
 * *Source:* distance of a run by the trapezoid; what one row holds: common practice, no source.
 */
export function runPattern(log: ReadLog, episodes: readonly Episode[], name: string): Pattern | null {
  const moving = movingOf(log, episodes)
  if (moving.seconds.length < 2) return null
  const fastest = moving.speed.reduce((most, speed) => Math.max(most, speed), 0)
  // Of a run of many hours rows have to be longer, or they would be more than a build keeps.
  const longest = Math.max(usuallyLongest, (2.2 * (moving.seconds.at(-1) ?? 0)) / mostRows)
  let near = closely * fastest
  let rows = rowsWithin(moving, { near, longest })
  while (rows === null) {
    near *= 1.5
    // However coarse, rows of the longest are fewer than a build keeps: stands against numbers that are none.
    if (!(near < 4 * fastest)) return null
    rows = rowsWithin(moving, { near, longest })
  }
  return rows.length === 0 ? null : { name, notes: 'From a log, by the rpm; on the level.', rows }
}
