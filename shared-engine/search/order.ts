/**
 * A number to about 1 part in 10⁹ (30 bits), so that numbers which differ by rounding alone are the same, whichever is
 * met first. What does not exist comes out as −Infinity, so that it can be compared.
 *
 * c = (2²³ + 1) x;  rounded = c − (c − x).
 *
 * *Source:* Dekker, A floating-point technique for extending the available precision, Numer. Math. 18 (1971): splitting.
 * @example coarse(0.1 + 0.2) === coarse(0.3) // true
 */
export function coarse(x: number): number {
  if (!Number.isFinite(x)) return -Infinity
  const scaled = splitter * x
  return scaled - (scaled - x)
}

const splitter = 2 ** 23 + 1

/** −1, 0 or 1 by the first number in which two lists of equal length differ. */
export function compareLists(one: Float64Array, other: Float64Array): number {
  for (let at = 0; at < one.length; at += 1) {
    const [first, second] = [one[at] ?? 0, other[at] ?? 0]
    if (first !== second) return first < second ? -1 : 1
  }
  return 0
}
