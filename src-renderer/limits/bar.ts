import type { MarginBand } from '../../shared-engine/limits/margin-words.ts'

/** Longest bar: a third past its line; what is further over is cut there, and the numbers say how far. */
const longest = 4 / 3

/**
 * Length of a limit's bar, 1 at the allowed line: what is used of the limit, whatever its sense. A limit whose margin
 * cannot be formed is drawn full.
 *
 * @param margin 1 − actual/allowed (or its like for minima and temperatures); null where it cannot be formed
 */
export function barOf(margin: number | null): number {
  return margin === null ? longest : Math.min(longest, Math.max(0, 1 - margin))
}

/** The band of a limit, and how likely it is past its line. */
export interface SureBand extends MarginBand {
  readonly probabilityOver: number
}

/** By limit. */
export type Bands = Readonly<Record<string, SureBand | undefined>>

/** Whether a margin is spread by more than half a percent: less is not worth a line. */
export function isBand({ margin5, margin95 }: MarginBand): boolean {
  return margin5 === null ? margin95 !== null : (margin95 ?? 0) - margin5 > 0.005
}
