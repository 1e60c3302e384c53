/**
 * A controller as one lump under a pattern that repeats itself: the temperature at the hottest end of a row.
 *
 * *Source:* heat balance of a lump, piecewise constant loss, periodic; `docs/model.md` §7.
 */
export class LumpCycle {
  /** Rows so far: e^(−t/RC) − 1 and R P, K, of each. */
  #count = 0
  readonly #steps: number[] = []
  readonly #rises: number[] = []
  /** s of each row, as far as its step is that of the time constant in use: a pattern keeps its rows. */
  readonly #seconds: number[] = []
  #known = 0
  /** The same of all rows, and the excess that they leave of none at the start, K. */
  #decay = 0
  #excess = 0
  #timeConstant = 1
  #resistance = 1

  /** Begins with nothing. @param resistance K/W to what cools it @param capacity J/K */
  begin(resistance: number, capacity: number): void {
    this.#resistance = resistance
    const timeConstant = resistance * capacity
    if (timeConstant !== this.#timeConstant) this.#known = 0
    this.#timeConstant = timeConstant
    this.#count = 0
    this.#decay = this.#excess = 0
  }

  /** Adds a row. @param loss W */
  add(seconds: number, loss: number): void {
    const step = this.#stepOf(this.#count, seconds)
    const rise = this.#resistance * loss
    this.#rises[this.#count] = rise
    this.#count += 1
    this.#excess += step * (this.#excess - rise)
    this.#decay += step + step * this.#decay
  }

  /** e^(−t/RC) − 1 of a row, worked out anew where its time or the time constant is another. */
  #stepOf(row: number, seconds: number): number {
    if (row >= this.#known || this.#seconds[row] !== seconds) {
      this.#steps[row] = Math.expm1(-seconds / this.#timeConstant)
      this.#seconds[row] = seconds
      this.#known = row + 1
    }
    return this.#steps[row] ?? NaN
  }

  /** Excess at the hottest end of a row of the round that is like the one before, K. */
  hottest(): number {
    let excess = -this.#excess / this.#decay
    let hottest = -Infinity
    for (let row = 0; row < this.#count; row += 1) {
      excess += (this.#steps[row] ?? 0) * (excess - (this.#rises[row] ?? 0))
      hottest = Math.max(hottest, excess)
    }
    return hottest
  }
}
