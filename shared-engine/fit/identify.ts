import { Matrix, QrDecomposition, SingularValueDecomposition } from 'ml-matrix'
import { sumOfSquares } from '../numeric/linear-fit.ts'
import type { MachineOfValues } from './model.ts'
import { weightFactors, type Solved } from './solve.ts'

type Columns = readonly (readonly number[])[]

/** Columns scaled to unit length, as a matrix. */
function unitColumns(columns: Columns): Matrix {
  const rows = columns[0]?.length ?? 0
  const matrix = Matrix.zeros(rows, columns.length)
  columns.forEach((column, at) => {
    const length = Math.sqrt(sumOfSquares(column)) || 1
    column.forEach((value, row) => matrix.set(row, at, value / length))
  })
  return matrix
}

/** How far columns can be told apart. */
interface Condition {
  /** Largest over least singular value of the columns scaled to unit length. */
  readonly condition: number
  /** Groups of columns that go together: those with a part of at least 0.2 in a weak direction. */
  readonly groups: readonly (readonly number[])[]
}

/** Weaker than this share of the strongest direction, entries cannot be told apart. */
const weakest = 100

/**
 * Which entries a log cannot tell apart.
 *
 * *Source:* D. A. Belsley, E. Kuh and R. E. Welsch, *Regression Diagnostics* (1980), chapter 3: condition of scaled columns.
 */
export function conditionOf(columns: Columns): Condition {
  if (columns.length === 0) return { condition: 1, groups: [] }
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(unitColumns(columns))
  const largest = diagonal[0] ?? 1
  const groups = diagonal.flatMap((value, at) => {
    if (value * weakest >= largest) return []
    const vector = rightSingularVectors.getColumn(at)
    return [vector.flatMap((part, entry) => (Math.abs(part) >= 0.2 ? [entry] : []))]
  })
  return { condition: largest / (diagonal.at(-1) ?? 0), groups }
}

/**
 * Share of sensor noise in what a column of `volts` and `sag` has left once the others are taken out of it: noisy amps look
 * like a resistance.
 *
 * @param at the entry
 * @returns variance of the noise over that of the rest; 0 where neither block has the entry
 * *Source:* W. A. Fuller, *Measurement Error Models* (1987), section 1.1: reliability of a regressor.
 */
export function noiseShareOf(solved: Solved, machineOf: MachineOfValues, at: number): number {
  const value = solved.values[at] ?? 0
  const h = 1e-6 * Math.abs(value)
  const [machine, changed] = [machineOf(solved.values), machineOf(solved.values.with(at, value + h))]
  const factors = weightFactors(solved.blocks)
  const rows: number[] = []
  let noise = 0
  let row = 0
  for (const { block } of solved.blocks) {
    const between = block.noiseBetween?.(machine, changed)
    block.clusters.forEach((_, place) => {
      if (between !== undefined) {
        rows.push(row)
        noise += (((between[place] ?? 0) / h) * (factors[row] ?? 0)) ** 2
      }
      row += 1
    })
  }
  const own = rows.map((place) => solved.columns[at]?.[place] ?? 0)
  if (!(sumOfSquares(own) > 0)) return 0
  const others = solved.columns
    .filter((_, other) => other !== at)
    .map((column) => rows.map((place) => column[place] ?? 0))
    .filter((column) => sumOfSquares(column) > 0)
  return noise / sumOfSquares(leftOf(own, others))
}

/** What is left of a column once others are taken out of it. */
function leftOf(column: readonly number[], others: Columns): readonly number[] {
  if (others.length === 0) return column
  const design = unitColumns(others)
  const qr = new QrDecomposition(design)
  if (!qr.isFullRank()) return column.map(() => 0)
  const parts = qr.solve(Matrix.columnVector([...column])).to1DArray()
  return column.map((value, row) =>
    parts.reduce((left, part, at) => left - part * design.get(row, at), value),
  )
}
