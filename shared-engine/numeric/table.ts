/** What a table says past its ends: its end value, the last segment's line, or nothing. */
type EndPolicy = 'hold' | 'extend' | 'absent'

/**
 * Piecewise-linear interpolation in a table of rows.
 *
 * @param xs strictly increasing, at least one
 * @param ys as many as `xs`
 * @param ends what holds outside the table; `absent` gives NaN there
 * @returns the function; exact in the rows themselves
 * @throws where the rows are not increasing or not as many: a bug of ours, tables of reference are checked when read
 * @example piecewiseLinear([0, 10], [3, 4], 'hold')(2.5) // 3.25
 */
export function piecewiseLinear(
  xs: readonly number[],
  ys: readonly number[],
  ends: EndPolicy,
): (x: number) => number {
  assertRows(xs, ys)
  const x = Float64Array.from(xs)
  const y = Float64Array.from(ys)
  const last = x.length - 1
  const at = (index: number, values: Float64Array) => values[index] as number
  return (wanted) => {
    const below = wanted < at(0, x)
    if (below || wanted > at(last, x)) {
      if (ends === 'absent') return NaN
      if (ends === 'hold' || last === 0) return at(below ? 0 : last, y)
    }
    if (last === 0) return at(0, y)
    const segment = segmentOf(x, wanted)
    const x0 = at(segment, x)
    const y0 = at(segment, y)
    const x1 = at(segment + 1, x)
    const y1 = at(segment + 1, y)
    if (wanted === x1) return y1
    return y0 + ((y1 - y0) * (wanted - x0)) / (x1 - x0)
  }
}

/** Index of the segment's lower row, by halving; the outer segments also serve what lies past them. */
function segmentOf(x: Float64Array, wanted: number): number {
  let low = 0
  let high = x.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((x[middle] as number) <= wanted) low = middle
    else high = middle
  }
  return low
}

function assertRows(xs: readonly number[], ys: readonly number[]): void {
  if (xs.length === 0 || xs.length !== ys.length) throw new Error('a table needs as many values as rows')
  xs.forEach((value, index) => {
    if (index > 0 && !(value > (xs[index - 1] as number))) throw new Error(`table rows fall at ${index}`)
  })
}
