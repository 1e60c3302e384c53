import { medianOf } from '../fit/noise.ts'
import type { Track } from '../fit/prepare.ts'

/** Rows of a segment without a gap between them. */
export interface Stretch {
  readonly track: Track
  readonly rows: readonly number[]
}

/** Fewest rows that say something. */
const fewest = 5

/** Longest step that is no gap: a second, or three usual steps. */
function longestStep(times: Float64Array): number {
  const steps = times.subarray(1).map((time, at) => time - (times[at] ?? 0))
  return Math.max(1, 3 * medianOf(steps) || 0) + 1e-9
}

/**
 * Stretches of a segment whose rows all take part; a gap, or a row that does not, ends one.
 *
 * @param most s after which a new one begins; Infinity for none
 */
export function stretchesOf(track: Track, takes: (row: number) => boolean, most: number): readonly Stretch[] {
  const { seconds } = track
  const longest = longestStep(seconds)
  const found: number[][] = []
  let before = NaN
  let begun = NaN
  seconds.forEach((time, row) => {
    if (!takes(row)) return
    const last = found.at(-1)
    if (
      last === undefined ||
      row !== before + 1 ||
      time - (seconds[before] ?? NaN) > longest ||
      time - begun >= most
    ) {
      // The row at which one ends is that at which the next begins, so that nothing between them is lost.
      const joins = last !== undefined && row === before + 1 && time - (seconds[before] ?? NaN) <= longest
      found.push(joins ? [before, row] : [row])
      begun = joins ? (seconds[before] ?? time) : time
    } else last.push(row)
    before = row
  })
  return found.filter((rows) => rows.length >= fewest).map((rows) => ({ track, rows }))
}
