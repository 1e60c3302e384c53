import { bracketedRoot } from './root.ts'

/** Share of a normal distribution within two standard deviations, erf(√2). */
const twoSigmaShare = 0.9544997361036416

const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
]

/**
 * Logarithm of the gamma function.
 *
 * @param x above 0
 * *Source:* C. Lanczos, SIAM J. Numer. Anal. 1 (1964), with the nine coefficients of g = 7; about 15 figures.
 * @example logGamma(5) // 3.1780538303479458
 */
function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x)
  const base = x + 6.5
  const sum = lanczos.reduce((total, part, at) => (at === 0 ? part : total + part / (x - 1 + at)), 0)
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(base) - base + Math.log(sum)
}

/**
 * Regularised incomplete beta function I_x(a, b).
 *
 * @param x 0 to 1
 * @param a, b above 0
 * *Source:* continued fraction 8.17.22 of the NIST Digital Library of Mathematical Functions, by Lentz's method.
 */
export function betaShare(x: number, a: number, b: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(1 - x, b, a)
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x))
  const tiny = 1e-300
  const safe = (value: number) => (Math.abs(value) < tiny ? tiny : value)
  let c = 1
  let d = 1 / safe(1 - ((a + b) * x) / (a + 1))
  let fraction = d
  for (let m = 1; m < 5000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / safe(1 + even * d)
    c = safe(1 + even / c)
    fraction *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / safe(1 + odd * d)
    c = safe(1 + odd / c)
    const step = d * c
    fraction *= step
    if (Math.abs(step - 1) < 1e-15) break
  }
  return (front * fraction) / a
}

/**
 * Student's factor: how many standard uncertainties hold the 95.45 % of two standard deviations of a normal one.
 *
 * @param freedom ν, degrees of freedom, not rounded, at least 1; Infinity for a normal distribution
 * @returns k; 2 for infinite ν
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), G.3 and table G.2.
 * @example studentFactor(10) // 2.2837
 */
export function studentFactor(freedom: number): number {
  // Past this the factor is 2 to nine figures, and the continued fraction would lose them.
  if (freedom > 1e8) return 2
  const outside = (k: number) => betaShare(freedom / (freedom + k * k), freedom / 2, 0.5)
  return bracketedRoot((k) => outside(k) - (1 - twoSigmaShare), 1, 1000) ?? NaN
}
