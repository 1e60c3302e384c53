/** The column as it would be read `late` seconds later; straight lines between rows, NaN past the ends. */
export function shiftedBy(late: number, column: Float64Array, seconds: Float64Array): Float64Array {
  if (late === 0) return column
  let at = 0
  return column.map((_, row) => {
    const time = (seconds[row] ?? NaN) + late
    while (at > 0 && (seconds[at] ?? NaN) > time) at -= 1
    while (at + 2 < seconds.length && (seconds[at + 1] ?? NaN) <= time) at += 1
    const [before, after] = [seconds[at] ?? NaN, seconds[at + 1] ?? NaN]
    if (!(time >= before && time <= after)) return NaN
    const share = (time - before) / (after - before)
    const [low, high] = [column[at] ?? NaN, column[at + 1] ?? NaN]
    return share === 0 ? low : low + share * (high - low)
  })
}
