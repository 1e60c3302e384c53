import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { Matrix, QrDecomposition } from 'ml-matrix'
import { normalInverse, sumOfSquares, type Fitted } from './linear-fit.ts'

/** Residuals of a model at parameters: what least squares makes small. */
type ResidualsOf = (parameters: readonly number[]) => readonly number[]

/** A fit with what shows whether it is settled. */
interface Settled extends Fitted {
  /** Size of the last step over that of the parameters: 1e-9 or less where the fit is settled. */
  readonly lastStep: number
}

/** Relative step of the central differences: error of about 1e-12 in a smooth model. */
const difference = 1e-6

/**
 * Columns of the Jacobian by central differences, h = 1e-6 of the parameter.
 *
 * @param scales sizes of the parameters, above 0, for those that are about 0
 */
function jacobianOf(
  residualsOf: ResidualsOf,
  parameters: readonly number[],
  scales: readonly number[],
): number[][] {
  return parameters.map((value, at) => {
    const h = difference * Math.max(Math.abs(value), Math.abs(scales[at] ?? 1) * 1e-3)
    const shifted = (by: number) => residualsOf(parameters.map((p, k) => (k === at ? p + by : p)))
    const above = shifted(h)
    const below = shifted(-h)
    return above.map((one, row) => (one - (below[row] ?? 0)) / (2 * h))
  })
}

const fromZero = (
  residualsOf: ResidualsOf,
  start: readonly number[],
  iterations: number,
): readonly number[] => {
  const count = residualsOf(start).length
  const places = Array.from({ length: count }, (_, place) => place)
  try {
    const { parameterValues } = levenbergMarquardt(
      { x: places, y: places.map(() => 0) },
      (scaled) => {
        const residuals = residualsOf(scaled.map((value, at) => value * (start[at] ?? 1)))
        return (place) => residuals[place] ?? NaN
      },
      {
        initialValues: start.map(() => 1),
        damping: 1e-2,
        centralDifference: true,
        gradientDifference: difference,
        maxIterations: iterations,
        errorTolerance: 0,
      },
    )
    return parameterValues.map((value, at) => value * (start[at] ?? 1))
  } catch {
    // A singular step: Gauss and Newton go on from the start, and say how far they came.
    return start
  }
}

/** One step of Gauss and Newton, halved while it makes the sum of squares larger; null where none can be had. */
function stepFrom(
  residualsOf: ResidualsOf,
  parameters: readonly number[],
  scales: readonly number[],
): { readonly next: readonly number[]; readonly size: number } | null {
  const residuals = residualsOf(parameters)
  const columns = jacobianOf(residualsOf, parameters, scales)
  const lengths = columns.map((column) => Math.sqrt(sumOfSquares(column)))
  if (lengths.some((length) => !(length > 0 && length < Infinity))) return null
  const design = Matrix.zeros(residuals.length, parameters.length)
  columns.forEach((column, at) =>
    column.forEach((value, row) => design.set(row, at, value / (lengths[at] ?? 1))),
  )
  const qr = new QrDecomposition(design)
  if (!qr.isFullRank()) return null
  const step = qr
    .solve(Matrix.columnVector([...residuals]))
    .to1DArray()
    .map((value, at) => value / (lengths[at] ?? 1))
  const now = sumOfSquares(residuals)
  for (let share = 1; share > 1e-6; share /= 2) {
    const next = parameters.map((value, at) => value - share * (step[at] ?? 0))
    if (sumOfSquares(residualsOf(next)) <= now * (1 + 1e-12)) {
      const size = Math.max(
        ...next.map((_, at) => Math.abs((step[at] ?? 0) * share) / Math.abs(scales[at] ?? 1)),
      )
      return { next, size }
    }
  }
  return null
}

/**
 * Nonlinear least squares: the parameters that make Σ residual² least.
 *
 * Levenberg and Marquardt first, then steps of Gauss and Newton until nothing moves, since the former's own end is no
 * sign of having arrived. From a far start it can stop elsewhere: `lastStep` shows it.
 *
 * @param start one size for each parameter, not 0; also the scale of the parameters
 * @param iterations of the first part; 0 where the start is near already
 * @returns coefficients, covariance s² (JᵀJ)⁻¹, and the residuals as they are (model, not data less model)
 * *Source:* K. Levenberg (1944) and D. Marquardt (1963), as in Nocedal and Wright, *Numerical Optimization*, chapter 10;
 * ml-levenberg-marquardt. Twelve problems of the NIST Statistical Reference Datasets are its test.
 */
export function leastSquares(residualsOf: ResidualsOf, start: readonly number[], iterations = 300): Settled {
  let parameters = iterations > 0 ? fromZero(residualsOf, start, iterations) : start
  let lastStep = Infinity
  for (let count = 0; count < 100 && lastStep > 1e-13; count += 1) {
    const scales = parameters.map((value, at) => Math.abs(value) || Math.abs(start[at] ?? 1))
    const step = stepFrom(residualsOf, parameters, scales)
    if (step === null) break
    parameters = step.next
    // At the end of its digits a step only trembles.
    if (count > 10 && step.size < 1e-10 && step.size >= lastStep) break
    lastStep = step.size
  }
  const residuals = residualsOf(parameters)
  const freedom = residuals.length - parameters.length
  const variance = freedom > 0 ? sumOfSquares(residuals) / freedom : 0
  const columns = jacobianOf(residualsOf, parameters, start)
  const finite = columns.every((column) => column.every(Number.isFinite))
  const covariance = finite
    ? normalInverse(columns).map((row) => row.map((value) => value * variance))
    : parameters.map(() => parameters.map(() => NaN))
  return { coefficients: parameters, covariance, freedom, residuals, lastStep }
}
