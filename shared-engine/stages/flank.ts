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
