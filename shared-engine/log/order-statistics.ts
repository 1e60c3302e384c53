// Order statistics of logs take elements of the sample and do not draw lines between them: quantised channels have few
// values, and a value between two of them was never seen.

/** A copy in ascending order. */
export function sortedOf(values: ArrayLike<number>): Float64Array {
  return Float64Array.from(values).sort()
}

/** The middle element, the upper one of two: element ⌊n/2⌋ from 0; NaN of none. */
export function medianOf(values: ArrayLike<number>): number {
  return sortedOf(values)[Math.floor(values.length / 2)] ?? NaN
}

/**
 * The element of a rank: ⌊q (n − 1) + ½⌋ from 0; NaN of none.
 *
 * @param q 0 for the least, 1 for the largest
 * *Source:* nearest rank, Hyndman and Fan, *Sample quantiles in statistical packages*, The American Statistician 50
 * (1996), definitions 1 to 3 are its kin.
 */
export function rankOf(values: ArrayLike<number>, q: number): number {
  if (values.length === 0) return NaN
  return sortedOf(values)[Math.floor(q * (values.length - 1) + 0.5)] ?? NaN
}

/** Median of the steps above zero between neighbours; NaN without one. */
export function medianPositiveStep(values: ArrayLike<number>): number {
  const steps: number[] = []
  for (let place = 1; place < values.length; place += 1) {
    const step = (values[place] ?? NaN) - (values[place - 1] ?? NaN)
    if (step > 0) steps.push(step)
  }
  return medianOf(steps)
}

/** How many samples decide on steps and quanta. */
export const lookedAt = 1_001

/**
 * Least difference of two values above 1e-4 among the first samples: the step of a channel's readings; NaN where it has
 * one value alone.
 */
export function quantumOf(values: ArrayLike<number>): number {
  const sorted = sortedOf(Array.from(values).slice(0, lookedAt))
  let least = Infinity
  for (let place = 1; place < sorted.length; place += 1) {
    const step = (sorted[place] ?? NaN) - (sorted[place - 1] ?? NaN)
    if (step > 1e-4 && step < least) least = step
  }
  return least === Infinity ? NaN : least
}
