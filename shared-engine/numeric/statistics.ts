import { quantileSorted } from 'd3-array'

/**
 * Quantile of a sample: linear between its order statistics, the lowest value at 0 and the highest at 1.
 *
 * @param sorted ascending, finite
 * @param p 0 to 1
 * @returns `null` of an empty sample
 *
 * *Source:* Hyndman and Fan, *Sample quantiles in statistical packages*, The American Statistician 50 (1996),
 * definition 7.
 *
 * @example quantileOf([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantileOf(sorted: ArrayLike<number>, p: number): number | null {
  return quantileSorted(Array.from(sorted), p) ?? null
}

/** Ranks from 1; equal values share the mean of the ranks that they take up. */
export function ranksOf(values: ArrayLike<number>): Float64Array {
  // Numbers alone are sorted many times faster than their places by a comparing function: a rank is then looked up.
  const sorted = Float64Array.from(values).sort()
  const ranks = new Float64Array(values.length)
  for (let index = 0; index < ranks.length; index += 1) {
    const value = values[index] as number
    const first = placeOf(sorted, value, false)
    const next = sorted[first + 1] === value ? placeOf(sorted, value, true) : first + 1
    ranks[index] = (first + 1 + next) / 2
  }
  return ranks
}

/** Place of the first of some sorted numbers that is not below a value, or, past it, that is above. */
function placeOf(sorted: Float64Array, value: number, past: boolean): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    const number = sorted[middle] as number
    if (number < value || (past && number === value)) low = middle + 1
    else high = middle
  }
  return low
}

/** Pearson's correlation; `null` where there are fewer than two pairs or one side does not vary. */
export function correlationOf(xs: ArrayLike<number>, ys: ArrayLike<number>): number | null {
  const count = Math.min(xs.length, ys.length)
  let meanX = 0
  let meanY = 0
  for (let index = 0; index < count; index++) {
    meanX += (xs[index] as number) / count
    meanY += (ys[index] as number) / count
  }
  let xx = 0
  let yy = 0
  let xy = 0
  for (let index = 0; index < count; index++) {
    const x = (xs[index] as number) - meanX
    const y = (ys[index] as number) - meanY
    xx += x * x
    yy += y * y
    xy += x * y
  }
  return xx > 0 && yy > 0 ? Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy))) : null
}

/**
 * Spearman's rank correlation: how steadily one quantity rises with another, whatever the curve; ties share ranks.
 *
 * @param xs finite
 * @param ys as many
 * @returns −1 to 1; `null` where there are fewer than two pairs or one side does not vary
 *
 * *Source:* Kendall and Gibbons, *Rank Correlation Methods*, 5th edition (1990), chapter 3: Pearson's correlation of mid-ranks.
 *
 * @example rankCorrelationOf([1, 2, 3], [1, 4, 9]) // 1
 */
export function rankCorrelationOf(xs: ArrayLike<number>, ys: ArrayLike<number>): number | null {
  return correlationOf(ranksOf(xs), ranksOf(ys))
}
