/** A curve's points, some of them; `null` parts it. */
export interface Thinned {
  readonly xs: readonly number[]
  readonly ys: readonly (number | null)[]
}

/** Indices to keep of one column: first, least, greatest and last, in order. */
function kept(ys: readonly (number | null)[], from: number, to: number): number[] {
  let least = from
  let greatest = from
  for (let index = from; index < to; index++) {
    const y = ys[index] ?? 0
    if (y < (ys[least] ?? 0)) least = index
    if (y > (ys[greatest] ?? 0)) greatest = index
  }
  return [...new Set([from, least, greatest, to - 1])].sort((a, b) => a - b)
}

/**
 * Leaves out points that could not be told apart on the screen: in each column, of the points between two gaps, the
 * first, the least, the greatest and the last stay. So no peak is lost, and a gap stays a gap.
 *
 * @param xs rising
 * @param ys as many; `null` in a gap
 * @param columnOf the column (px) that an x falls in, rising with x
 * @returns points in the same order; all of them where that is few
 */
export function thinned(
  xs: readonly number[],
  ys: readonly (number | null)[],
  columnOf: (x: number) => number,
): Thinned {
  const indices: number[] = []
  let start = 0
  while (start < xs.length) {
    if (ys[start] === null || ys[start] === undefined) {
      indices.push(start++)
      continue
    }
    const column = Math.floor(columnOf(xs[start] ?? 0))
    let end = start + 1
    while (end < xs.length && ys[end] !== null && Math.floor(columnOf(xs[end] ?? 0)) === column) end++
    // One or two points are all kept: most columns of a list that was thinned before.
    if (end - start <= 2) for (let index = start; index < end; index++) indices.push(index)
    else indices.push(...kept(ys, start, end))
    start = end
  }
  return { xs: indices.map((index) => xs[index] ?? 0), ys: indices.map((index) => ys[index] ?? null) }
}
