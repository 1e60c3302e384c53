import type { LimitSense as Sense } from '../../shared-engine/limits/limit.ts'
import { percentText } from '../../shared-engine/units/percent.ts'

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

/**
 * "12 % in hand", "8 % over", for a least value "8 % short"; "exceeded" where no margin can be formed: nothing is allowed.
 */
export function marginWords(margin: number | null, sense: Sense = 'maximum'): string {
  if (margin === null) return 'exceeded'
  const text = percentText(margin)
  const past = sense === 'minimum' ? 'short' : 'over'
  return margin < 0 ? `${text}\u202F% ${past}` : `${text}\u202F% in hand`
}

/** Where nine tenths of the samples of a margin lie; null ends are past any number. */
interface Band {
  readonly margin5: number | null
  readonly margin95: number | null
}

/** The band of a limit, and how likely it is past its line. */
export interface SureBand extends Band {
  readonly probabilityOver: number
}

/** By limit. */
export type Bands = Readonly<Record<string, SureBand | undefined>>

/** Whether a margin is spread by more than half a percent: less is not worth a line. */
export function isBand({ margin5, margin95 }: Band): boolean {
  return margin5 === null ? margin95 !== null : (margin95 ?? 0) - margin5 > 0.005
}

/** "27 to 21 % over", "14 % over to 24 % in hand". */
export function bandWords({ margin5, margin95 }: Band, sense: Sense = 'maximum'): string {
  const [from, to] = [marginWords(margin5, sense), marginWords(margin95, sense)]
  const sameSide = margin5 !== null && margin95 !== null && margin5 < 0 === margin95 < 0
  return `${sameSide ? from.split('\u202F%')[0] : from} to ${to}`
}
