import type { RowSprings } from '../geometry/row-springs.ts'
import type { Sharing } from './sharing.ts'
import { fullTurn } from '../constants.ts'

/** Room for the rows of a track: more than a sprocket of the schema can engage. */
export const rowRoom = 256

/**
 * Fills the force of every row that carries.
 *
 * f_j = 2 sinh(θ/2)/sinh(mθ) · [F cosh((m − j + ½) θ) + 2 y_m sinh(mθ/2) sinh((m − 2j + 1) θ/2)], in decaying
 * exponentials: what a level far above the pull leaves equal never has to be taken off.
 *
 * @param forces filled, N, from index 1 at the tight end
 * @param sharing loaded
 * @param springs of the same track
 * *Source:* the closed form of `Sharing`; `docs/model.md` §6.
 */
export function setRowForces(forces: Float64Array, sharing: Sharing, springs: RowSprings): void {
  const { rows, slack, pull } = sharing
  const { halfSine, halfStep, powers, rises } = springs
  if (rows === 1) {
    forces[1] = pull
    return
  }
  const whole = powers[rows] ?? 0
  const missing = rises[rows] ?? 0
  const scale = (2 * halfSine) / (missing * (1 + whole))
  const level = slack * missing
  for (let row = 1; row <= rows; row += 1) {
    const near = (powers[row] ?? 0) / halfStep
    const far = (powers[rows - row] ?? 0) * halfStep
    const apart = rows - 2 * row + 1
    const lean = apart > 0 ? near * (rises[apart] ?? 0) : -far * (rises[-apart] ?? 0)
    forces[row] = scale * (pull * (near + whole * far) + level * lean)
  }
}

const forces = new Float64Array(rowRoom)

/**
 * How close the worst row is to climbing out of mesh.
 *
 * Row j is pushed out by f_j tan(β − atan μ_f) and held in by [N_0 + f_j/2 + Σ_{i>j} f_i] · 2π/z; the largest ratio of the
 * two over the rows. Without pretension that is the last one's, 2 · z/2π times the slope, whatever the load.
 *
 * @param sharing loaded
 * @param springs of the same track
 * @param slope tan(β − atan μ_f)
 * @param pretension N_0, N
 * @param sprocketTeeth z
 * @returns ratio; 1 lifts out
 * *Source:* `docs/model.md` §6; rigid flanks, assumption. Rows that do not carry are at 0.
 */
export function climbRatioOf(
  sharing: Sharing,
  springs: RowSprings,
  slope: number,
  pretension: number,
  sprocketTeeth: number,
): number {
  if (pretension === 0) return (slope * sprocketTeeth) / Math.PI
  setRowForces(forces, sharing, springs)
  // the largest force/held so far, as its two parts: one division for all rows
  let worst = 0
  let holding = 1
  let behind = 0
  for (let row = sharing.rows; row >= 1; row -= 1) {
    const force = forces[row] ?? 0
    const held = pretension + force / 2 + behind
    if (force > 0 && force * holding > worst * held) {
      worst = force
      holding = held
    }
    behind += force
  }
  return ((worst / holding) * slope * sprocketTeeth) / fullTurn
}
