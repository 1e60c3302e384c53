/** Place of the first of rising numbers, from a place on, that is not below a value; their count where all are. */
export function firstFrom(rising: ArrayLike<number>, value: number, from = 0): number {
  let [low, high] = [from, rising.length]
  while (low < high) {
    const middle = (low + high) >>> 1
    if ((rising[middle] ?? Infinity) < value) low = middle + 1
    else high = middle
  }
  return low
}
