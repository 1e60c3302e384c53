import { mega, milli } from '../units/factors.ts'

/**
 * Comparative stress of a round shaft in bending and torsion.
 *
 * σ′ = √[(32 M)² + 3 (16 T)²]/(π d³).
 *
 * @param bending M, N·m
 * @param torque T, N·m
 * @param diameter d, m
 * @returns Pa, against the yield strength
 * *Source:* von Mises; Shigley, eqs. 5-15 and 7-15.
 */
export function comparativeStress(bending: number, torque: number, diameter: number): number {
  const bent = 32 * bending
  const twisted = 16 * torque
  return Math.sqrt(bent * bent + 3 * twisted * twisted) / (Math.PI * diameter * diameter * diameter)
}

/** What a shaft's material and surface decide of its endurance. */
interface EnduranceMaterial {
  readonly metal: boolean
  /** S_ut, Pa. */
  readonly tensile: number
  /** Rotating-beam strength of a metal, or what is left of another for full reversal, Pa. */
  readonly endurance: number
}

/**
 * Surface factor of a machined shaft.
 *
 * k_a = min(1, 4.51 S_ut^−0.265), S_ut in MPa.
 *
 * *Source:* Shigley, table 6-2, machined or cold-drawn, eq. 6-19.
 * @example surfaceFactor(735e6) // 0.7845
 */
export function surfaceFactor(tensile: number): number {
  return Math.min(1, 4.51 * (tensile / mega) ** -0.265)
}

/**
 * Size factor of a turning round shaft.
 *
 * k_b = min(1, 1.24 d^−0.107) to 51 mm, 1.51 d^−0.157 above, d in mm.
 *
 * *Source:* Shigley, eq. 6-20.
 * @example sizeFactor(0.028) // 0.868
 */
export function sizeFactor(diameter: number): number {
  const d = diameter / milli
  return d <= 51 ? Math.min(1, 1.24 * d ** -0.107) : 1.51 * d ** -0.157
}

/** 99 % reliability. *Source:* Shigley, table 6-5. */
export const reliabilityFactor = 0.814

/**
 * Endurance strength of a shaft of metal; of anything else what the table gives.
 *
 * S_e = k_a k_b · 0.814 · S_e′.
 *
 * @param diameter d, m
 * @returns Pa
 * *Source:* Shigley, eq. 6-18, tables 6-2 and 6-5.
 */
export function enduranceStrength(material: EnduranceMaterial, diameter: number): number {
  if (!material.metal) return material.endurance
  return surfaceFactor(material.tensile) * sizeFactor(diameter) * reliabilityFactor * material.endurance
}

/** Notch factors of a shaft: of bending and of torsion. */
interface Notch {
  readonly bending: number
  readonly torsion: number
}

/**
 * How much of its fatigue strength a turning shaft uses: bending fully reversed, torque steady.
 *
 * U = 16/(π d³) · (2 K_f M/S_e + √3 K_fs T/S_ut).
 *
 * @param bending M, N·m
 * @param torque T, N·m
 * @param diameter d, m
 * @param endurance S_e, Pa
 * @param tensile S_ut, Pa
 * @returns 1/n: 1 lasts just so
 * *Source:* Shigley, eq. 7-7 (distortion energy, Goodman), M_a = M, T_m = T. Torque that reverses is worse: assumption.
 */
export function fatigueUse(
  bending: number,
  torque: number,
  diameter: number,
  endurance: number,
  tensile: number,
  notch: Notch,
): number {
  const bent = (2 * notch.bending * bending) / endurance
  const twisted = (Math.sqrt(3) * notch.torsion * torque) / tensile
  return (16 / (Math.PI * diameter * diameter * diameter)) * (bent + twisted)
}

/**
 * Bending of a shaft by a pull across it.
 *
 * M = Q · span/4, the wheel midway between bearings, or Q · overhang beyond the last; 0 where neither is known.
 *
 * @param pull Q, N
 * @param arm span/4 or overhang, m; 0 where neither is known
 * *Source:* statics of a beam on two supports.
 */
export function shaftBending(pull: number, arm: number): number {
  return pull * arm
}

/**
 * Load of the bearing beside a wheel.
 *
 * Q/2 with the wheel midway; 2 Q where it overhangs [assumption]; Q where neither is known.
 *
 * @param pull Q, N
 * @param seat where the wheel sits
 * @returns N
 */
export function bearingLoad(pull: number, seat: 'between' | 'beyond' | 'unknown'): number {
  return pull * { between: 0.5, beyond: 2, unknown: 1 }[seat]
}
