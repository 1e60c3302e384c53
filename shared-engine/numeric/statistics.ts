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
  const order = Uint32Array.from(values, (_, index) => index).sort(
    (x, y) => (values[x] as number) - (values[y] as number),
  )
  const ranks = new Float64Array(values.length)
  for (let start = 0; start < order.length;) {
    let end = start + 1
    const value = values[order[start] as number]
    while (end < order.length && values[order[end] as number] === value) end++
    for (let place = start; place < end; place++) ranks[order[place] as number] = (start + 1 + end) / 2
    start = end
  }
  return ranks
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
