import type { PatternRowPart } from '../machine/parts.ts'

/** Heights over the way of a pattern. */
interface SlopeProfile {
  /** m along the slope. */
  readonly metres: readonly number[]
  /** m above the start. */
  readonly heights: readonly number[]
}

/**
 * Heights of the rows alone, before anything is driven: of rows that ask for a speed, by that speed.
 *
 * @param topSpeed m/s, for rows in shares of it and for throttle, whose speed nobody knows yet; NaN counts as standing
 * *Source:* geometry; a throttle's way is its share of top speed for as long: a sketch and no result.
 */
export function sketchedProfileOf(
  rows: readonly PatternRowPart[],
  ownGrade: number,
  topSpeed: number,
): SlopeProfile {
  const [metres, heights] = [[0], [0]]
  for (const { kind, value, seconds, grade, turnShare } of rows) {
    const speed = kind === 'speed' ? value : kind === 'brake' ? 0 : value * topSpeed || 0
    const way = speed * seconds * (1 - turnShare)
    const rise = grade ?? ownGrade
    metres.push((metres.at(-1) ?? 0) + way)
    heights.push((heights.at(-1) ?? 0) + (way * rise) / Math.hypot(1, rise))
  }
  return { metres, heights }
}
