import type { LimitId } from '../limits/id.ts'

/** Where a limit is crossed. */
export interface Crossing {
  readonly id: LimitId
  /** The first value past the crossing: to 1 part in 10⁹ of the range, or the whole number. In the bench unit. */
  readonly value: number
  /** Whether it is over from there on, by rising value; else it is kept from there on. */
  readonly goesOver: boolean
}

interface Valued {
  readonly value: number
}

/** Ids of the limits that are over at a value; null where there is no such build. */
type OverAt = (value: number) => ReadonlySet<LimitId> | null

/** Share of the range to which a crossing is found. */
const closeness = 1e-10

/**
 * Where limits are crossed between neighbouring points of a sweep.
 *
 * Bisection on "is it over": it needs no margin, so that it finds limits that jump (a tooth more engaged) or whose margin
 * can't be formed on one side. A limit that is crossed there and back within one step is not seen.
 *
 * @param points by rising value
 * @param whole whether only whole numbers are values
 * *Source:* bisection, any numerical-analysis text.
 */
export function crossingsOf(points: readonly Valued[], whole: boolean, overAt: OverAt): Crossing[] {
  const [first, last] = [points[0]?.value ?? 0, points.at(-1)?.value ?? 0]
  const search = { whole, enough: whole ? 1 : closeness * Math.abs(last - first), overAt }
  const over = points.map(({ value }) => overAt(value))
  return points.slice(1).flatMap(({ value: high }, place): Crossing[] => {
    const low = points[place]?.value ?? high
    const [before, after] = [over[place], over[place + 1]]
    if (before === null || before === undefined || after === null || after === undefined) return []
    const changed = [...new Set([...before, ...after])].filter((id) => before.has(id) !== after.has(id))
    return changed.toSorted().map((id) => {
      const goesOver = after.has(id)
      return { id, value: placeOf(id, goesOver, low, high, search), goesOver }
    })
  })
}

interface Search {
  readonly whole: boolean
  readonly enough: number
  readonly overAt: OverAt
}

function placeOf(id: LimitId, goesOver: boolean, below: number, above: number, search: Search): number {
  const { whole, enough, overAt } = search
  let [low, high] = [below, above]
  while (high - low > enough) {
    const middle = whole ? Math.floor((low + high) / 2) : (low + high) / 2
    if (middle <= low || middle >= high) break
    const over = overAt(middle)
    if (over === null) break // a gap inside the step: its far side is the closest that can be stated
    if (over.has(id) === goesOver) high = middle
    else low = middle
  }
  return high
}
