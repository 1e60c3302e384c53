import type { ToothPart } from '../build/machine-parts.ts'
import type { Sharing } from './sharing.ts'

/** Most rows that a sprocket of the schema can engage, with one to spare. */
const powers = new Float64Array(256)

/**
 * Slope of the force that pushes a tooth out along its flank.
 *
 * tan(β − atan μ_f), 0 where negative: friction holds a steep flank by itself.
 *
 * *Source:* wedge with friction; engine contract §6.
 */
export function climbSlopeOf(tooth: ToothPart): number {
  return Math.max(0, Math.tan((tooth.flank ?? 0) - Math.atan(tooth.flankFriction)))
}

/**
 * How close the worst row is to climbing out of mesh.
 *
 * Row j is pushed out by f_j tan(β − atan μ_f) and held in by [N_0 + f_j/2 + Σ_{i>j} f_i] · 2π/z; the largest ratio of the
 * two over the rows. With y as in sharing, f_j = y_{j−1} − y_j and Σ_{i>j} f_i = y_j − y_m.
 *
 * @param sharing loaded
 * @param slope tan(β − atan μ_f)
 * @param pretension N_0, N
 * @param sprocketTeeth z
 * @returns ratio; 1 lifts out. Infinity where nothing holds a pushed row in
 * *Source:* engine contract §6; rigid flanks, assumption. Rows that do not carry are at 0.
 */
export function climbRatioOf(
  sharing: Sharing,
  slope: number,
  pretension: number,
  sprocketTeeth: number,
): number {
  const { rows, decay, tight, slack, halfSine, pull } = sharing
  const step = Math.exp(-decay)
  powers[0] = 1
  for (let index = 1; index <= rows; index += 1) powers[index] = (powers[index - 1] ?? 0) * step
  const whole = powers[rows] ?? 0
  const missing = -Math.expm1(-rows * decay)
  // y_j = falling e^{−jθ} + rising e^{−(m−j)θ}; written with F so that equal ends lose no digits
  const falling = (pull + slack * missing) / ((1 + whole) * missing)
  const rising = (tight * missing - pull) / ((1 + whole) * missing)
  const halfStep = Math.exp(decay / 2)
  let worst = 0
  let behind = 0
  for (let row = rows; row >= 1; row -= 1) {
    const fromTight = powers[row] ?? 0
    const fromSlack = powers[rows - row] ?? 0
    const force = 2 * halfSine * (falling * fromTight * halfStep - (rising * fromSlack) / halfStep)
    if (force > 0) worst = Math.max(worst, force / (pretension + force / 2 + behind))
    behind += force
  }
  return (worst * slope * sprocketTeeth) / (2 * Math.PI)
}
