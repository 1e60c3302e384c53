import { sumOfSquares } from '../numeric/linear-fit.ts'
import { studentFactor } from '../numeric/student.ts'
import type { BudgetPart } from './budget.ts'

/** An uncertainty put together from its parts. */
export interface Combined {
  readonly standardUncertainty: number
  /** ν, not rounded; null where it is infinite. */
  readonly degreesOfFreedom: number | null
  /** k, Student's factor of 95.45 %. */
  readonly coverageFactor: number
  /** U = k u. */
  readonly plusMinus: number
}

/** Past this a number of degrees of freedom says no more than infinitely many. */
const endless = 1e12

/**
 * Combined and expanded uncertainty of independent parts.
 *
 * u = √Σ u_i²;  ν = u⁴/Σ(u_i⁴/ν_i);  U = k(ν) u.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 5.1.2; Welch and Satterthwaite, its equation G.2b; not rounded down.
 */
export function combined(
  parts: readonly Pick<BudgetPart, 'standardUncertainty' | 'degreesOfFreedom'>[],
): Combined {
  const largest = parts.reduce((most, part) => Math.max(most, part.standardUncertainty), 0)
  if (largest === 0)
    return { standardUncertainty: 0, degreesOfFreedom: null, coverageFactor: 2, plusMinus: 0 }
  const shares = parts.map((part) => part.standardUncertainty / largest)
  const square = sumOfSquares(shares)
  const spent = parts.reduce(
    (sum, { degreesOfFreedom }, at) =>
      degreesOfFreedom === null ? sum : sum + (shares[at] ?? 0) ** 4 / degreesOfFreedom,
    0,
  )
  const freedom = (square * square) / spent
  const degreesOfFreedom = freedom < endless ? freedom : null
  const standardUncertainty = largest * Math.sqrt(square)
  const coverageFactor = studentFactor(degreesOfFreedom ?? Infinity)
  return {
    standardUncertainty,
    degreesOfFreedom,
    coverageFactor,
    plusMinus: coverageFactor * standardUncertainty,
  }
}
