/**
 * Torsional stress of a solid round shaft.
 *
 * τ = 16 K_A T/(π d³).
 *
 * @param torque K_A T, N·m, service factor included
 * @param diameter d, m
 * @returns Pa; allowed is 0.577 of the yield strength [distortion energy]
 * *Source:* Shigley, eqs. 3-37 and 5-21.
 * @example shaftStress(10, 0.01) // 50.9e6
 */
export function shaftStress(torque: number, diameter: number): number {
  return (16 * torque) / (Math.PI * diameter * diameter * diameter)
}
