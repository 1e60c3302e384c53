/** How many of one level make one of the next. */
const fan = 16

/**
 * Where the greatest of each block of values stands (or the least), level by level: a block of the first level is so many
 * values, one of the next so many blocks. A value that is none is passed over; a block of them alone names its first.
 */
export type Extremes = readonly Uint32Array[]

/**
 * The pyramid over a list of values.
 *
 * @param sign 1: the greatest; −1: the least
 */
export function extremesOf(values: Float64Array, sign: 1 | -1): Extremes {
  const levels: Uint32Array[] = []
  let below: Uint32Array | null = null
  for (let count = values.length; count > 2 * fan; count = Math.ceil(count / fan)) {
    const level: Uint32Array = new Uint32Array(Math.ceil(count / fan))
    for (let block = 0; block < level.length; block += 1) {
      const first = block * fan
      const end = Math.min(count, first + fan)
      let best = below === null ? first : (below[first] ?? 0)
      let most = -Infinity
      for (let at = first; at < end; at += 1) {
        const place: number = below === null ? at : (below[at] ?? 0)
        const value = sign * (values[place] ?? NaN)
        if (!(value > most)) continue
        most = value
        best = place
      }
      level[block] = best
    }
    levels.push(level)
    below = level
  }
  return levels
}

/**
 * Place of the greatest of some values (or the least), found through the pyramid: a few dozen looks, however many there
 * are.
 *
 * @param from, to places, the last one not included
 * @returns −1 where there is no value
 */
export function extremeIn(
  values: Float64Array,
  levels: Extremes,
  sign: 1 | -1,
  from: number,
  to: number,
): number {
  let best = -1
  let most = -Infinity
  const look = (place: number) => {
    const value = sign * (values[place] ?? NaN)
    if (!(value > most)) return
    most = value
    best = place
  }
  let [low, high, level] = [from, to, -1]
  for (;;) {
    const here = levels[level]
    const at = (place: number) => (here === undefined ? place : (here[place] ?? 0))
    if (level + 1 >= levels.length || high - low <= 2 * fan) {
      for (let place = low; place < high; place += 1) look(at(place))
      return best
    }
    while (low % fan !== 0) look(at(low++))
    while (high % fan !== 0) look(at(--high))
    low /= fan
    high /= fan
    level += 1
  }
}
