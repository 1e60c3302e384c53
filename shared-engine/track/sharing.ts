import type { RowSprings } from '../geometry/row-springs.ts'

/**
 * How the engaged rows share a loop's pull, from the stiffness of tooth and loop.
 *
 * Rows are springs k, the loop between them springs S/p: f_j = k max(0, u_j), T_j = T_{j−1} − f_j,
 * u_{j+1} = u_j − e − T_j p/S, Σ f_j = F. With y_j = T_j + e S/p and κ = k p/S the rows that carry obey
 * y_{j−1} − (2 + κ) y_j + y_{j+1} = 0, so y is a sum of e^{−jθ} and e^{jθ}, sinh(θ/2) = √κ/2: a closed form where
 * marching from one end would lose its digits.
 */
export class Sharing {
  /** Rows that carry. */
  rows = 1
  /** Tension of the first carrying row's tight side plus e S/p, N. */
  tight = 0
  /** Tension of the last carrying row's slack side plus e S/p, N. */
  slack = 0
  /** F, N, what the rows pass on together. */
  pull = 0
  /** Forces of the first and the last row that carry, N. */
  first = 0
  last = 0
}

/**
 * Finds which rows carry a load.
 *
 * Rows lift at one end alone: at the slack end where y there is positive, at the tight end where y there is negative. The
 * rows that carry are the most, m ≤ n, whose last force is not negative: cosh((m − ½) θ) ≤ (y_far/y_near) cosh(θ/2).
 * The first of them, at the tight end, carries
 * f_1 = 2 sinh(θ/2)/sinh(mθ) · [F cosh((m − ½) θ) + 2 y_m sinh(mθ/2) sinh((m − 1) θ/2)], here in decaying exponentials;
 * the last one the same seen from the slack end, with −y_0 for y_m.
 *
 * @param pull F = K_A F_e, N, > 0
 * @param slackTension T_n = N_0 + m′ v_b², N
 * *Source:* after Gerbert, Jönsson, Persson and Stensson, Load Distribution in Timing Belts, ASME J. Mech. Des. 100
 * (1978); friction on the tooth tops left out; rigid sprocket: `docs/model.md` §6.
 */
export function setLoad(sharing: Sharing, springs: RowSprings, pull: number, slackTension: number): void {
  const slack = slackTension + springs.errorTension
  const tight = slack + pull
  let rows = springs.engaged
  if (slack > 0) rows = carryingRows(springs, slack, tight)
  else if (tight < 0) rows = carryingRows(springs, -tight, -slack)
  sharing.pull = pull
  sharing.slack = slack
  sharing.tight = tight
  sharing.rows = rows
  sharing.first = sharing.last = pull
  if (rows === 1) return
  const { halfSine, halfStep, rises } = springs
  const before = rises[rows - 1] ?? NaN
  const missing = rises[rows] ?? NaN
  const whole = 1 - missing
  // cosh((m − ½) θ) and 2 sinh(mθ/2) sinh((m − 1) θ/2), both over e^{mθ}/2
  const cosh = halfStep * (1 + whole * (1 - before))
  const sinh = halfStep * missing * before
  const scale = (2 * halfSine) / (missing * (1 + whole))
  sharing.first = scale * (pull * cosh + slack * sinh)
  sharing.last = scale * (pull * cosh - tight * sinh)
}

/** @param near, far y at both ends without their sign, the smaller one first */
function carryingRows({ ratios, engaged }: RowSprings, near: number, far: number): number {
  let rows = engaged
  while (rows > 1 && !(far >= (ratios[rows] ?? NaN) * near)) rows -= 1
  return rows
}

/**
 * Largest force of a row: at the tight end, or at the slack end of a loop whose pitch is too short.
 *
 * @param sharing loaded
 * @returns N
 * *Source:* the closed form of {@link Sharing} has its greatest value at an end.
 */
export function largestRowForce(sharing: Sharing): number {
  return Math.max(sharing.first, sharing.last)
}
