/**
 * The involute function.
 *
 * inv φ = tan φ − φ.
 *
 * @param angle φ, rad, 0 ≤ φ < π/2
 * @returns rad
 * *Source:* ISO 21771, the involute function.
 * @example involute(0.3490658503988659) // 0.014904383867336446
 */
export function involute(angle: number): number {
  return Math.tan(angle) - angle
}

/**
 * The angle of a given involute: the inverse of {@link involute}.
 *
 * Newton's method on tan φ − φ − v, whose slope tan²φ grows: from above the root it falls towards it without passing.
 * Both ∛(3v) and atan(v + π/2) lie above.
 *
 * @param value v = inv φ, rad, > 0
 * @returns φ, rad; NaN where v ≤ 0
 * *Source:* Newton's method on a convex function.
 * @example inverseInvolute(0.014904383867336446) // 0.34906585039886591
 */
export function inverseInvolute(value: number): number {
  if (!(value > 0)) return NaN
  let angle = Math.min(Math.cbrt(3 * value), Math.atan(value + Math.PI / 2))
  for (let step = 0; step < 60; step += 1) {
    const tangent = Math.tan(angle)
    const change = (tangent - angle - value) / (tangent * tangent)
    if (!(change > 0)) break // at the root, to rounding
    angle -= change
    if (change < 1e-16 * angle) break
  }
  return angle
}
