/** Cycles of one range and mean; half a cycle where the history never closes it. */
interface LoadCycles {
  /** Largest less least, in the unit of the history. */
  readonly range: number
  readonly mean: number
  /** 1 or ½. */
  readonly count: number
}

/**
 * The turning points of a history: its first and last value, and each at which it turns. Values that are no numbers are
 * left out.
 */
export function turningPoints(history: ArrayLike<number>): number[] {
  const points: number[] = []
  eachTurn(history, (point) => points.push(point))
  return points
}

/** The same one after the other: of a long log they would be another list as long. */
function eachTurn(history: ArrayLike<number>, take: (point: number) => void): void {
  let [before, last, seen] = [NaN, NaN, 0]
  for (let place = 0; place < history.length; place += 1) {
    const value = history[place] ?? NaN
    if (!Number.isFinite(value) || value === last) continue
    // going on in the same direction: the point between was no turn
    if (seen <= 1 || value > last !== last > before) {
      if (seen > 0) take(last)
      before = last
      seen += 1
    }
    last = value
  }
  if (seen > 0) take(last)
}

/** Hears of a cycle between two turning points: 1, or ½ where the history never closes it. */
type TakeCycle = (one: number, two: number, count: number) => void

/**
 * Counts the cycles of a load history.
 *
 * With X the range of the last two turning points and Y the one before it: where X ≥ Y, Y is a cycle and its points go,
 * or, where it holds the start, half a cycle and its first point goes. What is left counts as half cycles.
 *
 * @param take hears of the cycles in the order in which they close
 * *Source:* ASTM E1049-85 (2017), section 5.4.4, rainflow counting.
 */
export function eachCycle(history: ArrayLike<number>, take: TakeCycle): void {
  /** Turning points that no cycle has used up, the first `length` of them. */
  const open: number[] = []
  let length = 0
  eachTurn(history, (point) => {
    open[length] = point
    length += 1
    while (length >= 3) {
      const [one, two, three] = [open[length - 3] ?? 0, open[length - 2] ?? 0, point]
      if (Math.abs(three - two) < Math.abs(two - one)) break
      const holdsStart = length === 3
      take(one, two, holdsStart ? 0.5 : 1)
      if (holdsStart) open[0] = two
      length -= holdsStart ? 1 : 2
      open[length - 1] = three
    }
  })
  for (let place = 1; place < length; place += 1) take(open[place - 1] ?? 0, open[place] ?? 0, 0.5)
}

/** The same as a list. */
export function rainflowCycles(history: ArrayLike<number>): readonly LoadCycles[] {
  const cycles: LoadCycles[] = []
  eachCycle(history, (one, two, count) =>
    cycles.push({ range: Math.abs(two - one), mean: (one + two) / 2, count }),
  )
  return cycles
}

/** Cycles of equal range added up, the smallest range first. */
export function countsByRange(
  cycles: readonly LoadCycles[],
): readonly { readonly range: number; readonly count: number }[] {
  const counts = new Map<number, number>()
  for (const { range, count } of cycles) counts.set(range, (counts.get(range) ?? 0) + count)
  return [...counts].map(([range, count]) => ({ range, count })).sort((one, other) => one.range - other.range)
}
