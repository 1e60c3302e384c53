import { linearFit, sumOfSquares } from '../../numeric/linear-fit.ts'
import { betaShare, studentFactor } from '../../numeric/student.ts'

/** A mean effect with what is known of it. */
export interface Effect {
  readonly value: number
  /** The interval of 95 of 100 is the value ± this. */
  readonly within: number
  /** Chance of an effect of this size or more, where there is none. */
  readonly chance: number
  /** The same where its standard uncertainty has a part more. */
  readonly widenedBy: (open: number) => Pick<Effect, 'within' | 'chance'>
  /** What is left of each number, in the order of the data. */
  readonly left: readonly number[]
}

/** Most that neighbours may go together: past it, one run is one number. *Source:* common practice, no source. */
const mostAlike = 0.95
/** Degrees of freedom below which nothing is said. */
const leastFreedom = 4

/**
 * The effect of one column on the data, beside others.
 *
 * y ≈ Δ b + Σ β c by least squares; b̃: b less what the others tell of it; V = Σ b̃²e²/(Σ b̃²)² · n/ν · (1 + ρ)/(1 − ρ) with
 * ρ the correlation of neighbours; ± k √V, k Student's for ν (1 − ρ)/(1 + ρ) degrees that count.
 *
 * @param b, y, others each as long
 * @param follows whether a number follows the one before it at once
 * @param lost degrees of freedom that were spent before
 * @returns null where the columns depend on each other or too few numbers are left
 * *Source:* least squares and its robust variance: White, *Econometrica* 48 (1980); numbers that count: Bayley and
 * Hammersley, *Supplement to the Journal of the Royal Statistical Society* 8 (1946); bias of ρ: Kendall, *Biometrika* 41
 * (1954); from memory, all three.
 */
export function effectOf(
  b: readonly number[],
  others: readonly (readonly number[])[],
  y: readonly number[],
  follows: readonly boolean[],
  lost: number,
): Effect | null {
  const spent = lost + 1 + others.length
  const freedom = y.length - spent
  if (freedom < leastFreedom) return null
  const { coefficients, residuals } = linearFit([b, ...others], y)
  const [value = NaN] = coefficients
  const own = others.length === 0 ? b : linearFit(others, b).residuals
  const size = sumOfSquares(own)
  if (!Number.isFinite(value) || !(size > 1e-9 * sumOfSquares(b))) return null
  const alike = neighboursOf(residuals, follows, 1 + others.length)
  const fewer = (1 - alike) / (1 + alike)
  const spread = residuals.reduce((sum, left, at) => sum + ((own[at] ?? 0) * left) ** 2, 0)
  const error = Math.sqrt((spread * y.length) / freedom / fewer) / size
  const counting = Math.max(1, freedom * fewer)
  const factor = studentFactor(counting)
  const widenedBy = (open: number) => {
    const whole = Math.hypot(error, open)
    const t = value / whole
    const chance =
      whole === 0 ? Number(value === 0) : betaShare(counting / (counting + t * t), counting / 2, 0.5)
    return { within: factor * whole, chance }
  }
  return { value, ...widenedBy(0), widenedBy, left: residuals }
}

/** ρ: how far a number goes with the one before it, its bias taken out; 0 where they do not. */
function neighboursOf(left: readonly number[], follows: readonly boolean[], lines: number): number {
  let [together, squares, pairs] = [0, 0, 0]
  left.forEach((one, at) => {
    const before = left[at - 1]
    if (before === undefined || follows[at] !== true) return
    together += one * before
    squares += (one * one + before * before) / 2
    pairs += 1
  })
  if (!(squares > 0)) return 0
  const seen = together / squares
  return Math.min(mostAlike, Math.max(0, seen + (lines + 4 * seen) / pairs))
}

/** Standard deviation of what is left of some numbers; null of fewer than two. */
export function scatterOf(left: readonly number[]): number | null {
  return left.length < 2 ? null : Math.sqrt(sumOfSquares(left) / (left.length - 1))
}
