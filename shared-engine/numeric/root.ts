/** How closely a root is wanted and how long to look for it. */
interface RootOptions {
  /** Largest error of the root beyond rounding; 0: as close as numbers lie. */
  readonly tolerance?: number
  readonly mostSteps?: number
}

/**
 * The root of a continuous function between two points where it has opposite signs.
 *
 * Brent's method: inverse quadratic interpolation and secants while they shrink the bracket well, bisection where they
 * do not; never leaves the bracket, and needs no derivative. Ends when the bracket is as small as numbers lie around
 * the root, usually within 10 evaluations.
 *
 * @param f continuous on [low, high]
 * @param low one end of the bracket, finite
 * @param high the other end, finite
 * @returns the root; an end where `f` is 0 there; `null` where `f` has the same sign at both ends or is NaN at one
 *
 * *Source:* R. P. Brent, *Algorithms for Minimization without Derivatives* (1973), chapter 4, procedure `zero`.
 *
 * @example bracketedRoot((x) => x * x - 2, 0, 2) // 1.414213562373095
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  { tolerance = 0, mostSteps = 200 }: RootOptions = {},
): number | null {
  // Brent's letters: b the best point so far, a the one before it, c the other end of the bracket.
  let a = low
  let b = high
  let fa = f(a)
  let fb = f(b)
  if (fa === 0) return a
  if (fb === 0) return b
  if (!(fa < 0 ? fb > 0 : fa > 0 && fb < 0)) return null
  let c = a
  let fc = fa
  let step = b - a
  let previousStep = step
  for (let count = 0; count < mostSteps; count++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const close = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2
    const half = (c - b) / 2
    if (Math.abs(half) <= close || fb === 0) return b
    if (Math.abs(previousStep) < close || Math.abs(fa) <= Math.abs(fb)) {
      step = previousStep = half
    } else {
      const tried = interpolated(a, b, c, fa, fb, fc)
      const trusted = Math.abs(tried) < Math.min(1.5 * Math.abs(half), Math.abs(previousStep) / 2)
      if (trusted && tried * half > 0) {
        previousStep = step
        step = tried
      } else {
        step = previousStep = half
      }
    }
    a = b
    fa = fb
    b += Math.abs(step) > close ? step : half > 0 ? close : -close
    fb = f(b)
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      step = previousStep = b - a
    }
  }
  return b
}

/** Step from b to the root of the parabola through three points lying on its side, or of the secant where two coincide. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa
  if (a === c) return ((c - b) * s) / (s - 1)
  const q = fa / fc
  const r = fb / fc
  return (s * ((b - a) * (r - 1) - (c - b) * q * (q - r))) / ((q - 1) * (r - 1) * (s - 1))
}
