/** An elastic body: Young's modulus, Pa, and Poisson's ratio. */
export interface Elastic {
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

/**
 * Pressure between two tooth flanks at the pitch point.
 *
 * σ_H = C_p √[W_n/b · (1/ρ_1 + 1/ρ_2)], W_n = K_A K_v T/r_b1 along the line of action.
 *
 * @param coefficient C_p, √Pa
 * @param normalForce W_n, N
 * @param faceWidth b, m
 * @param curvature 1/ρ_1 + 1/ρ_2, 1/m
 * @returns Pa
 * *Source:* Shigley, eq. 14-14, with W_t/cos φ = W_n and r sin φ = ρ.
 */
export function flankPressure(
  coefficient: number,
  normalForce: number,
  faceWidth: number,
  curvature: number,
): number {
  return coefficient * Math.sqrt((normalForce / faceWidth) * curvature)
}
