import { Matrix, QrDecomposition } from 'ml-matrix'
import { medianOf } from './noise.ts'

/** A row of a straight regression: what is explained, and what by; errors know its piece. */
export interface RegressionRow {
  readonly cluster: string
  readonly said: number
  readonly moves: readonly number[]
}

/** Fewer pieces than this say nothing sure of a lag. */
const fewestPieces = 8
/** Robust least squares of rows, with errors by pieces; null where they do not suffice. */
export function regressed(
  rows: readonly RegressionRow[],
): { readonly values: readonly number[]; readonly covariance: Matrix } | null {
  const size = rows[0]?.moves.length ?? 0
  const clusters = [...new Set(rows.map(({ cluster }) => cluster))]
  if (size === 0 || clusters.length < fewestPieces || rows.length <= 4 * size) return null
  let weights = rows.map(() => 1)
  for (let round = 0; ; round += 1) {
    const root = weights.map(Math.sqrt)
    const design = new Matrix(rows.map(({ moves }, at) => moves.map((one) => one * (root[at] ?? 0))))
    const qr = new QrDecomposition(design)
    if (!qr.isFullRank()) return null
    const values = qr
      .solve(Matrix.columnVector(rows.map(({ said }, at) => said * (root[at] ?? 0))))
      .to1DArray()
    const left = rows.map(({ said, moves }) =>
      moves.reduce((sum, one, k) => sum - one * (values[k] ?? 0), said),
    )
    if (round === 4) return { values, covariance: covarianceOf(rows, clusters, weights, left) }
    const scale = 1.4826 * medianOf(left.map(Math.abs))
    weights = left.map((one) => Math.min(1, (3 * scale) / Math.max(Math.abs(one), Number.MIN_VALUE)))
  }
}

/** A⁻¹ Σ s_c s_cᵀ A⁻¹ N/(N − 1), s_c the scores of a piece. *Source:* K.-Y. Liang and S. L. Zeger, Biometrika 73 (1986). */
function covarianceOf(
  rows: readonly RegressionRow[],
  clusters: readonly string[],
  weights: readonly number[],
  left: readonly number[],
): Matrix {
  const size = rows[0]?.moves.length ?? 0
  const square = Matrix.zeros(size, size)
  const scores = new Map(clusters.map((cluster) => [cluster, Matrix.zeros(size, 1)]))
  rows.forEach(({ cluster, moves }, at) => {
    const column = Matrix.columnVector([...moves])
    square.add(column.mmul(column.transpose()).mul(weights[at] ?? 0))
    scores.get(cluster)?.add(column.clone().mul((weights[at] ?? 0) * (left[at] ?? 0)))
  })
  const inner = Matrix.zeros(size, size)
  for (const score of scores.values()) inner.add(score.mmul(score.transpose()))
  const bread = new QrDecomposition(square).solve(Matrix.eye(size))
  return bread
    .mmul(inner)
    .mmul(bread)
    .mul(clusters.length / (clusters.length - 1))
}
