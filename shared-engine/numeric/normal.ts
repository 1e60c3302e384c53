/** Polynomial by Horner's rule, constant first. */
const polynomial = (coefficients: readonly number[], x: number) =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0)

// Algorithm AS 241's letters: a/b near the middle, c/d in the tails, e/f far out.
const a = [
  3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125,
  45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
]
const b = [
  1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867,
  39307.89580009271061, 28729.085735721942674, 5226.495278852854561,
]
const c = [
  1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
  1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
]
const d = [
  1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
  0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
]
const e = [
  6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123,
  0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
]
const f = [
  1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
  1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
]

/**
 * The value that a standard normal variable stays below with a given probability.
 *
 * @param p probability, 0 to 1
 * @returns standard deviations from the mean, to about 1 part in 10^16; −Infinity at 0, Infinity at 1, NaN outside
 *
 * *Source:* Wichura, *Algorithm AS 241: The percentage points of the normal distribution*, Applied Statistics 37 (1988),
 * PPND16.
 *
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q
    return (q * polynomial(a, r)) / polynomial(b, r)
  }
  const tail = q < 0 ? p : 1 - p
  if (!(tail > 0)) return tail === 0 ? Math.sign(q) * Infinity : NaN
  const r = Math.sqrt(-Math.log(tail))
  const size =
    r <= 5 ? polynomial(c, r - 1.6) / polynomial(d, r - 1.6) : polynomial(e, r - 5) / polynomial(f, r - 5)
  return Math.sign(q) * size
}

/** Probability of a standard normal variable below −3 (Abramowitz and Stegun, table 26.1, to sixteen figures). */
const belowMinusThree = 0.0013498980316300946

/**
 * Quantile of a standard normal variable that is cut off at three standard deviations on either side.
 *
 * @param p probability, 0 to 1
 * @returns standard deviations, −3 to 3
 * @example truncatedNormalQuantile(0) // -3
 */
export function truncatedNormalQuantile(p: number): number {
  const value = normalQuantile(belowMinusThree + p * (1 - 2 * belowMinusThree))
  return Math.max(-3, Math.min(3, value))
}
