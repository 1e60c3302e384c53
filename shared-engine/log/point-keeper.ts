/** Least and most at each moment, where only a range is known. */
interface KeptRange {
  readonly low: (number | null)[]
  readonly high: (number | null)[]
}

/** Columns of time of which each keeps its first, least, greatest and last. */
const columns = 10_000

/** Rows of a segment from which its series are thinned: more points than a screen can show. */
const manyRows = 40_000

/**
 * Takes the points of a series one after the other and keeps those that can be told apart on a screen: of a long series the
 * first, the least, the greatest and the last of each column of time, so that no peak is lost and a gap stays a gap; of a
 * range, the least and the greatest.
 */
export class PointKeeper {
  readonly seconds: number[] = []
  readonly values: (number | null)[] = []
  readonly range: KeptRange | null
  readonly #reach: number
  /** Columns a second; 0: every point is kept. */
  readonly #pace: number
  #column = -1
  #before = NaN
  /** Points of the column so far, in order: first, least, greatest, last. */
  readonly #times = new Float64Array(4)
  readonly #held = new Float64Array(4)

  /**
   * @param rows of the segment
   * @param seconds that it lasts
   * @param reach s: two points further apart are parted by a null half-way
   */
  constructor(rows: number, seconds: number, reach: number, ranged: boolean) {
    this.#pace = rows > manyRows && seconds > 0 ? columns / seconds : 0
    this.#reach = reach
    this.range = ranged ? { low: [], high: [] } : null
  }

  /** Adds a point; times rise. */
  add(time: number, value: number, low = NaN, high = NaN): void {
    if (time - this.#before > this.#reach) {
      this.end()
      this.#put((time + this.#before) / 2, null, null, null)
    }
    this.#before = time
    if (this.#pace === 0) this.#put(time, value, low, high)
    else if (this.range !== null) this.#widen(time, value, low, high, this.range)
    else this.#take(time, value)
  }

  /** Puts what is held of the last column; to be called behind the last point. */
  end(): void {
    if (this.#column < 0) return
    this.#column = -1
    if (this.range !== null) return
    const [times, held] = [this.#times, this.#held]
    const [least, greatest] = (times[1] ?? 0) <= (times[2] ?? 0) ? [1, 2] : [2, 1]
    let last = NaN
    for (const at of [0, least, greatest, 3]) {
      const time = times[at] ?? NaN
      if (time !== last) this.#put(time, held[at] ?? NaN, null, null)
      last = time
    }
  }

  #take(time: number, value: number): void {
    const column = Math.floor(time * this.#pace)
    const [times, held] = [this.#times, this.#held]
    if (column !== this.#column) {
      this.end()
      this.#column = column
      times.fill(time)
      held.fill(value)
      return
    }
    if (value < (held[1] ?? NaN)) {
      times[1] = time
      held[1] = value
    }
    if (value > (held[2] ?? NaN)) {
      times[2] = time
      held[2] = value
    }
    times[3] = time
    held[3] = value
  }

  #widen(
    time: number,
    value: number,
    low: number,
    high: number,
    { low: lows, high: highs }: KeptRange,
  ): void {
    const column = Math.floor(time * this.#pace)
    const last = lows.length - 1
    if (column !== this.#column) {
      this.#column = column
      this.#put(time, value, low, high)
      return
    }
    lows[last] = Math.min(lows[last] ?? low, low)
    highs[last] = Math.max(highs[last] ?? high, high)
  }

  #put(time: number, value: number | null, low: number | null, high: number | null): void {
    this.seconds.push(time)
    this.values.push(value)
    this.range?.low.push(low)
    this.range?.high.push(high)
  }
}
