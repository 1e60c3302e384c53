/** One whole second of a segment: its rows, all of which take part. */
interface WholeSecond {
  readonly second: number
  readonly rows: readonly number[]
}

/**
 * Whole spans of a segment from its first row, in order; one with a row that does not take part is left out.
 *
 * @param span s; 1 for whole seconds
 */
export function wholeSpans(
  seconds: ArrayLike<number>,
  span: number,
  takes: (row: number) => boolean,
): readonly WholeSecond[] {
  const spans = new Map<number, number[] | null>()
  const first = seconds[0] ?? 0
  for (let row = 0; row < seconds.length; row += 1) {
    const place = Math.floor(((seconds[row] ?? 0) - first) / span)
    const rows = spans.get(place)
    if (!takes(row)) spans.set(place, null)
    else if (rows === undefined) spans.set(place, [row])
    else rows?.push(row)
  }
  return [...spans].flatMap(([second, rows]) => (rows === null ? [] : [{ second, rows }]))
}

/** Mean of a column over rows. */
export function meanOver(column: ArrayLike<number>, rows: readonly number[]): number {
  return rows.reduce((sum, row) => sum + (column[row] ?? NaN), 0) / rows.length
}
