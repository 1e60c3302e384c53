/** Two full-depth spur wheels in mesh. */
interface GearPair {
  readonly driverTeeth: number
  readonly drivenTeeth: number
  readonly sinPressureAngle: number
  readonly cosPressureAngle: number
}

/**
 * Contact ratio of two full-depth spur wheels.
 *
 * ε = [√(r_a1² − r_b1²) + √(r_a2² − r_b2²) − (r_1 + r_2) sin φ]/(π m cos φ), addendum m; the module cancels.
 *
 * @returns teeth in contact on the mean
 * *Source:* ISO 21771 and any gear text; addendum 1.0: ISO 53.
 * @example contactRatioOf({ driverTeeth: 20, drivenTeeth: 40, sinPressureAngle: Math.sin(Math.PI / 9), cosPressureAngle: Math.cos(Math.PI / 9) }) // 1.64
 */
export function contactRatioOf(pair: GearPair): number {
  const { sinPressureAngle: sine, cosPressureAngle: cosine } = pair
  const one = pair.driverTeeth / 2
  const other = pair.drivenTeeth / 2
  const approach = Math.sqrt((one + 1) * (one + 1) - one * cosine * one * cosine)
  const recess = Math.sqrt((other + 1) * (other + 1) - other * cosine * other * cosine)
  return (approach + recess - (one + other) * sine) / (Math.PI * cosine)
}

/**
 * Fewest teeth of the smaller wheel that clear the larger one's tips.
 *
 * N = 2/((1 + 2u) sin²φ) · (u + √(u² + (1 + 2u) sin²φ)), u ≥ 1 the ratio of the pair; not rounded.
 *
 * @returns teeth
 * *Source:* Shigley, eq. 13-11, with k = 1.
 */
export function fewestTeethOf(pair: Omit<GearPair, 'cosPressureAngle'>): number {
  const ratio = Math.max(pair.driverTeeth, pair.drivenTeeth) / Math.min(pair.driverTeeth, pair.drivenTeeth)
  const square = pair.sinPressureAngle * pair.sinPressureAngle
  const inside = (1 + 2 * ratio) * square
  return (2 * (ratio + Math.sqrt(ratio * ratio + inside))) / inside
}
