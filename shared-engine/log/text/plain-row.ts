import { mostExact, mostPlain, powersOfTen } from './number.ts'

/** Delimiters that no number can hold. */
const clear: readonly string[] = ['\t', ';', '|', ',']

const [zero, nine, plus, minus, lineFeed, carriageReturn] = [48, 57, 43, 45, 10, 13]

/**
 * Reads rows of nothing but plain numbers, the shape of nearly every row of a long log, straight from the bytes of a file:
 * to cut a row into cells first takes several times as long. A number is what `plainNumber` of number.ts takes for one.
 */
export class PlainRow {
  /** The numbers of the last row that was read, the first `width` of them; NaN where a cell was empty. */
  values = new Float64Array(32)
  readonly #delimiter: number
  readonly #mark: number

  /**
   * @param delimiter what parts the cells
   * @param mark decimal mark; as a delimiter it parts
   */
  constructor(delimiter: string, mark: string) {
    this.#delimiter = clear.includes(delimiter) ? delimiter.charCodeAt(0) : NaN
    this.#mark = mark === delimiter ? NaN : mark.charCodeAt(0)
  }

  /**
   * Reads a row into `values`.
   *
   * @param bytes characters below 128 as ASCII has them
   * @param from where the row begins
   * @param to where the text ends
   * @param width cells that it must have
   * @returns where the next row begins; −1 where the row is any other, or does not end with a line end
   */
  read(bytes: Uint8Array, from: number, to: number, width: number): number {
    if (width > this.values.length) this.values = new Float64Array(2 * width)
    const { values } = this
    let at = from
    let cell = 0
    let filled = 0
    for (;;) {
      const begun = at
      let code = bytes[at] ?? 0
      const negative = code === minus
      if (negative || code === plus) code = bytes[(at += 1)] ?? 0
      let digits = 0
      let after = -1
      let value = 0
      for (;;) {
        if (code >= zero && code <= nine) {
          value = value * 10 + code - zero
          digits += 1
        } else if (code === this.#mark && after < 0) after = digits
        else break
        code = bytes[(at += 1)] ?? 0
      }
      if (at >= to || cell === width) return -1
      if (at === begun) value = NaN
      else {
        if (digits === 0 || at - begun > mostPlain || value > mostExact) return -1
        if (after >= 0) value /= powersOfTen[digits - after] ?? 1
        if (negative) value = -value
        filled += 1
      }
      values[cell] = value
      cell += 1
      at += 1
      if (code === this.#delimiter) continue
      if (code === carriageReturn && bytes[at] === lineFeed && at < to) at += 1
      else if (code !== lineFeed) return -1
      return cell === width && filled > 0 ? at : -1
    }
  }
}
