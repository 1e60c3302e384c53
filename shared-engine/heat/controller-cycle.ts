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
  /** The same of all rows, and the excess that they leave of none at the start, K. */
  #decay = 0
  #excess = 0
  #timeConstant = 1
  #resistance = 1

  /** Begins with nothing. @param resistance K/W to what cools it @param capacity J/K */
  begin(resistance: number, capacity: number): void {
    this.#resistance = resistance
    this.#timeConstant = resistance * capacity
    this.#count = 0
    this.#decay = this.#excess = 0
  }

  /** Adds a row. @param loss W */
  add(seconds: number, loss: number): void {
    const step = Math.expm1(-seconds / this.#timeConstant)
    const rise = this.#resistance * loss
    this.#steps[this.#count] = step
    this.#rises[this.#count] = rise
    this.#count += 1
    this.#excess += step * (this.#excess - rise)
    this.#decay += step + step * this.#decay
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
