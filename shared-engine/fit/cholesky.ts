/**
 * Lower Cholesky factor of a covariance, and how to whiten by it.
 *
 * *Source:* Golub and Van Loan, *Matrix Computations*, algorithm 4.2.1.
 */
export class Whitener {
  readonly #factor: readonly Float64Array[]

  /** @param covariance of two places, the second not after the first */
  constructor(size: number, covariance: (row: number, column: number) => number) {
    const factor: Float64Array[] = []
    for (let row = 0; row < size; row += 1) {
      const line = new Float64Array(row + 1)
      for (let column = 0; column <= row; column += 1) {
        const other = factor[column] ?? line
        let sum = covariance(row, column)
        for (let k = 0; k < column; k += 1) sum -= (line[k] ?? 0) * (other[k] ?? 0)
        line[column] = column === row ? Math.sqrt(sum) : sum / (other[column] ?? NaN)
      }
      factor.push(line)
    }
    this.#factor = factor
  }

  /** L⁻¹ x. */
  whitened(x: ArrayLike<number>): Float64Array {
    const result = new Float64Array(this.#factor.length)
    this.#factor.forEach((line, row) => {
      let sum = x[row] ?? 0
      for (let k = 0; k < row; k += 1) sum -= (line[k] ?? 0) * (result[k] ?? 0)
      result[row] = sum / (line[row] ?? NaN)
    })
    return result
  }
}
