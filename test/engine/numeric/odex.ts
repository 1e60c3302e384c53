import { createRequire } from 'node:module'

/** Slopes dy/dt at a time and state. */
export type OdexSlopes = (time: number, state: readonly number[]) => readonly number[]

interface OdexSolver {
  absoluteTolerance: number
  relativeTolerance: number
  solve(
    slopes: OdexSlopes,
    from: number,
    start: readonly number[],
    to: number,
  ): { y: number[]; outcome: number }
}

// Required rather than imported: the package ships its TypeScript sources, which our strict settings would check too.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (count: number) => OdexSolver }

/**
 * The state at `to` by odex, a port of Hairer and Wanner's extrapolation code: an independent second opinion on
 * anything that moves through time.
 */
export function solvedByOdex(
  slopes: OdexSlopes,
  from: number,
  start: readonly number[],
  to: number,
  tolerance = 1e-11,
): readonly number[] {
  const solver = new Solver(start.length)
  solver.absoluteTolerance = tolerance
  solver.relativeTolerance = tolerance
  const { y, outcome } = solver.solve(slopes, from, start, to)
  if (outcome !== 0) throw new Error(`odex gave up with outcome ${outcome}`)
  return y
}
