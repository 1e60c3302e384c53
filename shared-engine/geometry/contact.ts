/** An elastic body: Young's modulus, Pa, and Poisson's ratio. */
interface Elastic {
  readonly modulus: number
  readonly poisson: number
}

/**
 * Elastic coefficient of two wheels.
 *
 * C_p = √(1/{π [(1 − ν_1²)/E_1 + (1 − ν_2²)/E_2]}).
 *
 * @returns √Pa
 * *Source:* Shigley, eq. 14-13.
 * @example elasticCoefficient({ modulus: 207e9, poisson: 0.3 }, { modulus: 207e9, poisson: 0.3 }) // 190271.85
 */
export function elasticCoefficient(one: Elastic, other: Elastic): number {
  const give =
    (1 - one.poisson * one.poisson) / one.modulus + (1 - other.poisson * other.poisson) / other.modulus
  return Math.sqrt(1 / (Math.PI * give))
}
