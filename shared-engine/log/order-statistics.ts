// Order statistics of logs take elements of the sample and do not draw lines between them: quantised channels have few
// values, and a value between two of them was never seen.

/** A copy in ascending order. */
function sortedOf(values: ArrayLike<number>): Float64Array {
  return new Float64Array(values).sort()
}

/**
 * The element that would stand at a place if the values were sorted, found without sorting them all.
 *
 * @param values reordered
 * *Source:* Hoare, Algorithm 65: Find, Communications of the ACM 4 (1961).
 */
function selected(values: Float64Array, place: number): number {
  let low = 0
  let high = values.length - 1
  while (low < high) {
    const pivot = values[(low + high) >>> 1] ?? NaN
    let up = low
    let down = high
    while (up <= down) {
      while ((values[up] ?? NaN) < pivot) up += 1
      while ((values[down] ?? NaN) > pivot) down -= 1
      if (up > down) break
      const kept = values[up] ?? NaN
      values[up] = values[down] ?? NaN
      values[down] = kept
      up += 1
      down -= 1
    }
    if (place <= down) high = down
    else if (place >= up) low = up
    else break
  }
  return values[place] ?? NaN
}

/** The middle element, the upper one of two: element ⌊n/2⌋ from 0; NaN of none. The values hold no NaN. */
export function medianOf(values: ArrayLike<number>): number {
  return selected(new Float64Array(values), Math.floor(values.length / 2))
}

/** The same of values that are nobody else's: they are put into another order where they stand. */
export function medianOfOwn(values: Float64Array): number {
  return selected(values, Math.floor(values.length / 2))
}

/** The middle one of three. */
export function medianOfThree(one: number, two: number, three: number): number {
  return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three))
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
  return selected(new Float64Array(values), Math.floor(q * (values.length - 1) + 0.5))
}

/** The same of values that are nobody else's: they are put into another order where they stand. */
export function rankOfOwn(values: Float64Array, q: number): number {
  return selected(values, Math.floor(q * (values.length - 1) + 0.5))
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
 * Least difference of two values above 1e-4: the step of a channel's readings; NaN where it has
 * one value alone.
 */
export function quantumOf(values: ArrayLike<number>): number {
  const sorted = sortedOf(values)
  let least = Infinity
  for (let place = 1; place < sorted.length; place += 1) {
    const step = (sorted[place] ?? NaN) - (sorted[place - 1] ?? NaN)
    if (step > 1e-4 && step < least) least = step
  }
  return least === Infinity ? NaN : least
}
