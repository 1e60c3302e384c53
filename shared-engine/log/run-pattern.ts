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
/** Longest row, and shortest but for the last, s. */
const longest = 120
const shortest = 1
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

/** Rows that hold one speed each to within so many m/s; null where they are more than a build keeps. */
function rowsWithin(moving: Moving, near: number): readonly PatternRowPart[] | null {
  const { seconds, speed } = moving
  const rows: PatternRowPart[] = []
  let from = 0
  let [least, most] = [Infinity, -Infinity]
  const close = (to: number) => {
    const lasted = (seconds[to] ?? 0) - (seconds[from] ?? 0)
    if (lasted > 0) rows.push(plainRow('speed', meanSpeed(moving, from, to), lasted))
    from = to
    least = most = speed[to] ?? 0
  }
  for (let at = 0; at < seconds.length; at += 1) {
    const now = speed[at] ?? 0
    if (now < least) least = now
    if (now > most) most = now
    const lasted = (seconds[at] ?? 0) - (seconds[from] ?? 0)
    if (lasted >= longest || (lasted >= shortest && most - least > 2 * near)) close(at)
    if (rows.length > mostRows) return null
  }
  close(seconds.length - 1)
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
  let near = closely * fastest
  let rows = rowsWithin(moving, near)
  while (rows === null) {
    near *= 1.5
    // A long run at rest and a longest row can be more rows than a build keeps, however coarse.
    if (near > 4 * fastest) return null
    rows = rowsWithin(moving, near)
  }
  return rows.length === 0 ? null : { name, notes: 'From a log, by the rpm; on the level.', rows }
}
