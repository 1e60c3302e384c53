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
  for (let place = 0; place < history.length; place += 1) {
    const value = history[place] ?? NaN
    if (!Number.isFinite(value)) continue
    const last = points.at(-1)
    const before = points.at(-2)
    if (value === last) continue
    // going on in the same direction: the point between was no turn
    if (last !== undefined && before !== undefined && value > last === last > before)
      points[points.length - 1] = value
    else points.push(value)
  }
  return points
}

/**
 * Counts the cycles of a load history.
 *
 * With X the range of the last two turning points and Y the one before it: where X ≥ Y, Y is a cycle and its points go,
 * or, where it holds the start, half a cycle and its first point goes. What is left counts as half cycles.
 *
 * @returns cycles in the order in which they close
 * *Source:* ASTM E1049-85 (2017), section 5.4.4, rainflow counting.
 */
export function rainflowCycles(history: ArrayLike<number>): readonly LoadCycles[] {
  const cycles: LoadCycles[] = []
  const open: number[] = []
  for (const point of turningPoints(history)) {
    open.push(point)
    while (open.length >= 3) {
      const [one = 0, two = 0, three = 0] = open.slice(-3)
      if (Math.abs(three - two) < Math.abs(two - one)) break
      if (open.length === 3) {
        cycles.push(cycleOf(one, two, 0.5))
        open.shift()
      } else {
        cycles.push(cycleOf(one, two, 1))
        open.splice(-3, 2)
      }
    }
  }
  for (let place = 1; place < open.length; place += 1) {
    cycles.push(cycleOf(open[place - 1] ?? 0, open[place] ?? 0, 0.5))
  }
  return cycles
}

const cycleOf = (one: number, two: number, count: number): LoadCycles => ({
  range: Math.abs(two - one),
  mean: (one + two) / 2,
  count,
})

/** Cycles of equal range added up, the smallest range first. */
export function countsByRange(
  cycles: readonly LoadCycles[],
): readonly { readonly range: number; readonly count: number }[] {
  const counts = new Map<number, number>()
  for (const { range, count } of cycles) counts.set(range, (counts.get(range) ?? 0) + count)
  return [...counts].map(([range, count]) => ({ range, count })).sort((one, other) => one.range - other.range)
}
