import { inverse, Matrix } from 'ml-matrix'
import type { Build } from '../entries/schema.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { standardUncertaintyOf } from '../measure/readings.ts'
import { studentFactor } from '../numeric/student.ts'
import type { BlockState, Solved } from './solve.ts'
import { allResiduals, weightFactors } from './solve.ts'
import type { Block } from './blocks/block.ts'
import { machinesOf } from './model.ts'

/** How sure the values of a fit are. */
export interface Errors {
  /** Standard errors, tolerances of what was held included; in the entries' bench units. */
  readonly standardErrors: readonly number[]
  readonly fromTolerances: readonly number[]
  readonly degreesOfFreedom: readonly number[]
  readonly plusMinus: readonly number[]
  /** Of the values, tolerances of what was held aside. */
  readonly correlation: readonly (readonly number[])[]
}

/** Fewest pieces that can be left out one by one. */
const fewestPieces = 8

/** Lag-one correlation of residuals, neighbours being of the same piece. */
export function lagOneOf(values: ArrayLike<number>, clusters: readonly string[]): number {
  let products = 0
  let squares = 0
  for (let at = 0; at < values.length; at += 1) {
    const here = values[at] ?? 0
    squares += here * here
    if (at > 0 && clusters[at] === clusters[at - 1]) products += here * (values[at - 1] ?? 0)
  }
  return squares > 0 ? products / squares : 0
}

/** A part of the covariance, with the degrees of freedom of each variance in it. */
interface Part {
  readonly covariance: Matrix
  readonly freedom: readonly number[]
}

/** Rows of the stacked blocks that a predicate takes. */
function rowsOf(solved: Solved, takes: (block: Block, row: number) => boolean): readonly number[] {
  const rows: number[] = []
  let at = 0
  for (const { block } of solved.blocks)
    block.clusters.forEach((_, row) => {
      if (takes(block, row)) rows.push(at)
      at += 1
    })
  return rows
}

/** JᵀWJ and JᵀWρ of some rows. */
function normalOf({ columns, weighted }: Solved, rows: readonly number[]) {
  const size = columns.length
  const square = Matrix.zeros(size, size)
  const right = Matrix.zeros(size, 1)
  for (const row of rows)
    for (let one = 0; one < size; one += 1) {
      const slope = columns[one]?.[row] ?? 0
      if (slope === 0) continue
      right.set(one, 0, right.get(one, 0) + slope * (weighted[row] ?? 0))
      for (let other = 0; other < size; other += 1)
        square.set(one, other, square.get(one, other) + slope * (columns[other]?.[row] ?? 0))
    }
  return { square, right }
}

/** The inverse of a symmetric positive matrix whose rows may be of very different sizes. */
function scaledInverse(square: Matrix): Matrix {
  const size = Array.from({ length: square.rows }, (_, at) => Math.sqrt(square.get(at, at)) || 1)
  const scaled = Matrix.zeros(square.rows, square.rows)
  for (let r = 0; r < square.rows; r += 1)
    for (let c = 0; c < square.rows; c += 1)
      scaled.set(r, c, square.get(r, c) / ((size[r] ?? 1) * (size[c] ?? 1)))
  const result = inverse(scaled, true)
  for (let r = 0; r < square.rows; r += 1)
    for (let c = 0; c < square.rows; c += 1)
      result.set(r, c, result.get(r, c) / ((size[r] ?? 1) * (size[c] ?? 1)))
  return result
}

/**
 * Delete-a-group jackknife: each piece left out by one step, so that whatever lasts through a piece (a lag, a slope, a
 * gust) counts.
 *
 * V = (N − 1)/N Σ δ_c δ_cᵀ, δ_c = (A − A_c)⁻¹ J_cᵀ W_c ρ_c;  ν = (Σq)²/Σq² − 1, q_c = [A⁻¹ A_c A⁻¹]_jj.
 *
 * *Source:* B. Efron and C. Stein, Annals of Statistics 9 (1981); degrees of freedom after F. E. Satterthwaite.
 */
function jackknife(solved: Solved, whole: Matrix, inverseWhole: Matrix, clusters: readonly string[]): Part {
  const size = whole.rows
  const covariance = Matrix.zeros(size, size)
  const shares: number[][] = []
  for (const cluster of clusters) {
    const rows = rowsOf(solved, (block, row) => block.name !== 'heat' && block.clusters[row] === cluster)
    const { square, right } = normalOf(solved, rows)
    const step = scaledInverse(Matrix.sub(whole, square)).mmul(right)
    covariance.add(step.mmul(step.transpose()))
    shares.push(inverseWhole.mmul(square).mmul(inverseWhole).diagonal())
  }
  covariance.mul((clusters.length - 1) / clusters.length)
  const freedom = Array.from({ length: size }, (_, at) => {
    const q = shares.map((share) => share[at] ?? 0)
    const sum = q.reduce((all, one) => all + one, 0)
    const squares = q.reduce((all, one) => all + one * one, 0)
    return squares > 0 ? Math.max(1, (sum * sum) / squares - 1) : Infinity
  })
  return { covariance, freedom }
}

/** Covariance by the spread of residuals, made wider where neighbours go together. */
function bySpread(solved: Solved, inverseWhole: Matrix, states: readonly BlockState[]): Part {
  const size = inverseWhole.rows
  const covariance = Matrix.zeros(size, size)
  const variances = states.map((state) => {
    const rows = rowsOf(solved, (block) => block === state.block)
    const { square } = normalOf(solved, rows)
    const free = Math.max(1, rows.length - size - state.block.offsets)
    const spread = rows.reduce((sum, row) => sum + (solved.weighted[row] ?? 0) ** 2, 0) / free
    const lag = Math.min(0.99, lagOneOf(state.residuals, state.block.clusters))
    const part = inverseWhole
      .mmul(square)
      .mmul(inverseWhole)
      .mul(spread * Math.max(1, (1 + lag) / (1 - lag)))
    covariance.add(part)
    return { diagonal: part.diagonal(), free }
  })
  const freedom = Array.from({ length: size }, (_, at) => {
    const whole = variances.reduce((sum, { diagonal }) => sum + (diagonal[at] ?? 0), 0)
    const spent = variances.reduce((sum, { diagonal, free }) => sum + (diagonal[at] ?? 0) ** 2 / free, 0)
    return spent > 0 ? Math.max(1, whole ** 2 / spent) : Infinity
  })
  return { covariance, freedom }
}

/** How far the values move for a change of all weighted residuals: A⁻¹ JᵀW Δρ. */
function stepFor({ columns }: Solved, inverseWhole: Matrix, change: readonly number[]): readonly number[] {
  const right = columns.map((column) =>
    column.reduce((sum, slope, row) => sum + slope * (change[row] ?? 0), 0),
  )
  return inverseWhole.mmul(Matrix.columnVector(right)).to1DArray()
}

/**
 * What the tolerances of entries that were held put into the values: one step for each, with the entry moved by its
 * standard uncertainty.
 */
function fromHeld(
  solved: Solved,
  inverseWhole: Matrix,
  build: Build,
  paths: readonly string[],
): readonly number[] {
  const blocks = solved.blocks.map(({ block }) => block)
  const factors = weightFactors(solved.blocks)
  const sums = paths.map(() => 0)
  for (const [path, tolerance] of Object.entries(build.tolerances)) {
    const value = valueAt(build, keysOf(path))
    if (paths.includes(path) || typeof value !== 'number') continue
    const u = standardUncertaintyOf(value, tolerance)
    if (!(u > 0)) continue
    const moved = machinesOf(build, [...paths, path])
    const at = (by: number) => allResiduals(blocks, moved, [...solved.values, value + by])
    const [above, below] = [at(u), at(-u)]
    const difference = above.map((one, row) => ((one - (below[row] ?? 0)) / 2) * (factors[row] ?? 0))
    stepFor(solved, inverseWhole, difference).forEach((part, k) => (sums[k] = (sums[k] ?? 0) + part * part))
  }
  return sums.map(Math.sqrt)
}

/**
 * Errors of the values of a fit.
 *
 * @param more changes of all residuals by one standard error of something else that was taken out of the log, such as a lag
 */
export function errorsOf(
  solved: Solved,
  build: Build,
  paths: readonly string[],
  more: readonly (readonly number[])[] = [],
): Errors {
  const whole = normalOf(
    solved,
    rowsOf(solved, () => true),
  ).square
  const inverseWhole = scaledInverse(whole)
  const driven = solved.blocks.filter(({ block }) => block.name !== 'heat')
  const clusters = [...new Set(driven.flatMap(({ block }) => block.clusters))]
  const together = clusters.length >= fewestPieces
  const parts = [
    ...(together ? [jackknife(solved, whole, inverseWhole, clusters)] : []),
    bySpread(
      solved,
      inverseWhole,
      together ? solved.blocks.filter(({ block }) => block.name === 'heat') : solved.blocks,
    ),
  ]
  const covariance = parts.reduce(
    (sum, part) => Matrix.add(sum, part.covariance),
    Matrix.zeros(paths.length, paths.length),
  )
  const variances = covariance.diagonal()
  const fromTolerances = fromHeld(solved, inverseWhole, build, paths)
  const factors = weightFactors(solved.blocks)
  const steps = more.map((change) =>
    stepFor(
      solved,
      inverseWhole,
      change.map((one, row) => one * (factors[row] ?? 0)),
    ),
  )
  const standardErrors = variances.map((variance, at) =>
    Math.hypot(Math.sqrt(variance), fromTolerances[at] ?? 0, ...steps.map((step) => step[at] ?? 0)),
  )
  const degreesOfFreedom = paths.map((_, at) => {
    const spent = parts.reduce(
      (sum, part) => sum + part.covariance.get(at, at) ** 2 / (part.freedom[at] ?? 1),
      0,
    )
    return (standardErrors[at] ?? 0) ** 4 / spent
  })
  return {
    standardErrors,
    fromTolerances,
    degreesOfFreedom,
    plusMinus: standardErrors.map((error, at) => studentFactor(degreesOfFreedom[at] ?? Infinity) * error),
    correlation: paths.map((_, one) =>
      paths.map(
        (__, other) =>
          covariance.get(one, other) / Math.sqrt((variances[one] ?? 0) * (variances[other] ?? 0)),
      ),
    ),
  }
}
