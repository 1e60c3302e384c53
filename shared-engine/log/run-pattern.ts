import type { Pattern } from '../drive/drive.ts'
import { plainRow } from '../drive/rows.ts'
import type { PatternRowPart } from '../machine/parts.ts'
import { groundSpeedOfRpm } from '../vehicle/logged-speed.ts'
import type { Episode } from './episodes/episode.ts'
import { trackOnUntil } from './facts/facts.ts'
import type { ReadLog } from './read.ts'

/** A sample of a run's ground speed. */
interface Moving {
  readonly seconds: number
  /** m/s. */
  readonly speed: number
}

/** Most rows that a build keeps of a drive. */
const mostRows = 200
/** Longest row, and shortest but for the last, s. */
const longest = 120
const shortest = 1
/** A row holds one speed to within this share of the fastest, to begin with. *Source:* common practice, no source. */
const closely = 0.05

/** Time and speed of a run, its segments one behind the other, up to where the load went. */
function movingOf({ data, model }: ReadLog, episodes: readonly Episode[]): readonly Moving[] {
  const rpm = data.channels.get('rpm')
  const until = trackOnUntil(episodes)
  const { t, segmentOf } = data.timeline
  const found: Moving[] = []
  let [before, segment, now] = [NaN, -1, 0]
  for (const row of rpm?.samples ?? []) {
    const time = t[row] ?? 0
    const here = segmentOf[row] ?? 0
    if (time > until(here)) continue
    now += here === segment ? time - before : 0
    ;[before, segment] = [time, here]
    found.push({
      seconds: now,
      speed: Math.max(0, groundSpeedOfRpm(model.machine, rpm?.values[row] ?? 0, model.slip)),
    })
  }
  return found
}

/** Mean speed between two places, by the trapezoid: what is driven goes as far as what was. */
function meanSpeed(moving: readonly Moving[], from: number, to: number): number {
  let metres = 0
  for (let at = from + 1; at <= to; at += 1) {
    const [one, other] = [moving[at - 1], moving[at]]
    if (one !== undefined && other !== undefined)
      metres += ((other.seconds - one.seconds) * (one.speed + other.speed)) / 2
  }
  const seconds = (moving[to]?.seconds ?? 0) - (moving[from]?.seconds ?? 0)
  return seconds > 0 ? metres / seconds : 0
}

/** Rows that hold one speed each to within so many m/s. */
function rowsWithin(moving: readonly Moving[], near: number): readonly PatternRowPart[] {
  const rows: PatternRowPart[] = []
  let from = 0
  let [least, most] = [Infinity, -Infinity]
  const close = (to: number) => {
    const seconds = (moving[to]?.seconds ?? 0) - (moving[from]?.seconds ?? 0)
    if (seconds > 0) rows.push(plainRow('speed', meanSpeed(moving, from, to), seconds))
    from = to
    ;[least, most] = [moving[to]?.speed ?? 0, moving[to]?.speed ?? 0]
  }
  moving.forEach(({ seconds, speed }, at) => {
    ;[least, most] = [Math.min(least, speed), Math.max(most, speed)]
    const lasted = seconds - (moving[from]?.seconds ?? 0)
    if (lasted >= longest || (lasted >= shortest && most - least > 2 * near)) close(at)
  })
  close(moving.length - 1)
  return rows
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
  if (moving.length < 2) return null
  const fastest = moving.reduce((most, { speed }) => Math.max(most, speed), 0)
  let near = closely * fastest
  let rows = rowsWithin(moving, near)
  while (rows.length > mostRows) {
    near *= 1.5
    // A long run at rest and a longest row can be more rows than a build keeps, however coarse.
    if (near > 4 * fastest) return null
    rows = rowsWithin(moving, near)
  }
  return rows.length === 0 ? null : { name, notes: 'From a log, by the rpm; on the level.', rows }
}
