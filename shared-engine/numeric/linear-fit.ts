import { Matrix, QrDecomposition } from 'ml-matrix'

/** What least squares found: coefficients with their covariance, and what is left of the data. */
export interface Fitted {
  readonly coefficients: readonly number[]
  /** s² (JᵀJ)⁻¹; zeros where no degree of freedom is left. */
  readonly covariance: readonly (readonly number[])[]
  /** Rows less coefficients. */
  readonly freedom: number
  /** Data less the fit. */
  readonly residuals: readonly number[]
}

/** Sum of squares. */
export const sumOfSquares = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value * value, 0)

/** Rows of the inverse of an upper triangular matrix. */
function triangularInverse(upper: Matrix): Matrix {
  const size = upper.columns
  const inverse = Matrix.zeros(size, size)
  for (let column = 0; column < size; column += 1) {
    for (let row = column; row >= 0; row -= 1) {
      let rest = row === column ? 1 : 0
      for (let k = row + 1; k <= column; k += 1) rest -= upper.get(row, k) * inverse.get(k, column)
      inverse.set(row, column, rest / upper.get(row, row))
    }
  }
  return inverse
}

/**
 * (JᵀJ)⁻¹ by the triangle of J's QR decomposition, which keeps the digits that forming JᵀJ would lose.
 *
 * @param columns of J, each as long as the data
 * @returns rows of the inverse; not finite where the columns depend on each other
 */
export function normalInverse(columns: readonly (readonly number[])[]): number[][] {
  const scales = columns.map((column) => Math.sqrt(sumOfSquares(column)) || 1)
  const design = scaledDesign(columns, scales)
  const inverse = triangularInverse(new QrDecomposition(design).upperTriangularMatrix)
  const product = inverse.mmul(inverse.transpose())
  return scales.map((scale, row) => scales.map((other, column) => product.get(row, column) / (scale * other)))
}

function scaledDesign(columns: readonly (readonly number[])[], scales: readonly number[]): Matrix {
  const design = Matrix.zeros(columns[0]?.length ?? 0, columns.length)
  columns.forEach((column, at) =>
    column.forEach((value, row) => design.set(row, at, value / (scales[at] ?? 1))),
  )
  return design
}

/**
 * Linear least squares: y ≈ Σ coefficient × column.
 *
 * min |y − J β|², V = s² (JᵀJ)⁻¹, s² = |y − J β|²/ν.
 *
 * @param columns of J, each as long as y, at most as many as rows
 * @returns numbers that are not finite where the columns depend on each other
 * *Source:* Householder's QR, as in Golub and Van Loan, *Matrix Computations*, section 5.3; ml-matrix.
 * @example linearFit([[1, 1, 1], [0, 1, 2]], [1, 3, 5]).coefficients // [1, 2]
 */
export function linearFit(columns: readonly (readonly number[])[], y: readonly number[]): Fitted {
  const scales = columns.map((column) => Math.sqrt(sumOfSquares(column)) || 1)
  const qr = new QrDecomposition(scaledDesign(columns, scales))
  const coefficients = qr.isFullRank()
    ? qr
        .solve(Matrix.columnVector([...y]))
        .to1DArray()
        .map((value, at) => value / (scales[at] ?? 1))
    : columns.map(() => NaN)
  const residuals = y.map((value, row) =>
    columns.reduce((left, column, at) => left - (column[row] ?? 0) * (coefficients[at] ?? 0), value),
  )
  const freedom = y.length - columns.length
  const variance = freedom > 0 ? sumOfSquares(residuals) / freedom : 0
  const covariance = normalInverse(columns).map((row) => row.map((value) => value * variance))
  return { coefficients, covariance, freedom, residuals }
}

/**
 * Straight line y = a + b x by least squares; coefficients a, b.
 *
 * b = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)², a = ȳ − b x̄.
 *
 * @param x, y as many of each, two or more
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), H.3, with its covariance of intercept and slope.
 * @example lineFit([0, 1, 2], [1, 3, 5]).coefficients // [1, 2]
 */
export function lineFit(x: readonly number[], y: readonly number[]): Fitted {
  const count = x.length
  const meanX = x.reduce((sum, value) => sum + value, 0) / count
  const meanY = y.reduce((sum, value) => sum + value, 0) / count
  const spread = sumOfSquares(x.map((value) => value - meanX))
  const slope = x.reduce((sum, value, at) => sum + (value - meanX) * ((y[at] ?? 0) - meanY), 0) / spread
  const intercept = meanY - slope * meanX
  const residuals = y.map((value, at) => value - intercept - slope * (x[at] ?? 0))
  const freedom = count - 2
  const variance = freedom > 0 ? sumOfSquares(residuals) / freedom : 0
  const ofSlope = variance / spread
  const between = -meanX * ofSlope
  return {
    coefficients: [intercept, slope],
    covariance: [
      [variance / count + meanX * meanX * ofSlope, between],
      [between, ofSlope],
    ],
    freedom,
    residuals,
  }
}
