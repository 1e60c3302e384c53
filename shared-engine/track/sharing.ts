import type { TrackPart } from '../build/machine-parts.ts'

/**
 * Stiffness of one row of drive teeth, as short cantilevers.
 *
 * k = teethAcross · E w/[4 (h/t)³ + 2.4 (1 + ν) h/t].
 *
 * @param track with a tooth whose modulus E is known
 * @returns N/m; NaN where it is not
 * *Source:* Timoshenko beam, bending and shear with the form factor 6/5; engine contract §6.
 */
export function rowStiffnessOf(track: TrackPart): number {
  const tooth = track.tooth
  if (tooth === null || tooth.modulus === null) return NaN
  const slenderness = tooth.loadHeight / tooth.root
  const give = 4 * slenderness * slenderness * slenderness + 2.4 * (1 + tooth.poisson) * slenderness
  return (track.teethAcross * tooth.modulus * tooth.width) / give
}

/**
 * How the engaged rows share a loop's pull, from the stiffness of tooth and loop.
 *
 * Rows are springs k, the loop between them springs S/p: f_j = k max(0, u_j), T_j = T_{j−1} − f_j,
 * u_{j+1} = u_j − e − T_j p/S, Σ f_j = F. With y_j = T_j + e S/p and κ = k p/S the rows that carry obey
 * y_{j−1} − (2 + κ) y_j + y_{j+1} = 0, so y is a sum of e^{−jθ} and e^{jθ}, sinh(θ/2) = √κ/2: a closed form where
 * marching from one end would lose its digits.
 */
export class Sharing {
  /** Whether sharing can be computed. */
  known = false
  /** κ^½/2 = sinh(θ/2). */
  halfSine = 0
  /** θ. */
  decay = 0
  /** e S/p, N. */
  errorTension = 0
  /** Rows that carry. */
  rows = 1
  /** Tension of the first carrying row's tight side plus e S/p, N. */
  tight = 0
  /** Tension of the last carrying row's slack side plus e S/p, N. */
  slack = 0
  /** F, N, what the rows pass on together. */
  pull = 0
}

/** Prepares sharing for a track; the same for every load. */
export function setSharing(sharing: Sharing, track: TrackPart): void {
  const stiffness = rowStiffnessOf(track)
  sharing.known = track.loopStiffness !== null && !Number.isNaN(stiffness)
  if (track.loopStiffness === null || !sharing.known) return
  const relative = (stiffness * track.pitch) / track.loopStiffness
  sharing.halfSine = Math.sqrt(relative) / 2
  sharing.decay = 2 * Math.asinh(sharing.halfSine)
  sharing.errorTension = (track.pitchError * track.loopStiffness) / track.pitch
}

/**
 * Finds which rows carry a load.
 *
 * Rows lift at one end alone: at the slack end where y there is positive, at the tight end where y there is negative. The
 * rows that carry are the most, m ≤ n, whose last force is not negative: cosh((m − ½) θ) ≤ (y_far/y_near) cosh(θ/2).
 *
 * @param engaged n = z_e
 * @param pull F = K_A F_e, N, > 0
 * @param slackTension T_n = N_0 + m′ v_b², N
 * *Source:* after Gerbert, Jönsson, Persson and Stensson, Load Distribution in Timing Belts, ASME J. Mech. Des. 100
 * (1978); friction on the tooth tops left out; rigid sprocket: engine contract §6.
 */
export function setLoad(sharing: Sharing, engaged: number, pull: number, slackTension: number): void {
  const slack = slackTension + sharing.errorTension
  const tight = slack + pull
  sharing.pull = pull
  sharing.slack = slack
  sharing.tight = tight
  sharing.rows = engaged
  if (slack > 0) sharing.rows = carryingRows(sharing.decay, tight / slack, engaged)
  else if (tight < 0) sharing.rows = carryingRows(sharing.decay, slack / tight, engaged)
}

/** @param ratio far y over near y, > 1 */
function carryingRows(decay: number, ratio: number, engaged: number): number {
  const most = 0.5 + Math.acosh(ratio * Math.cosh(decay / 2)) / decay
  return most < engaged ? Math.max(1, Math.floor(most)) : engaged
}

/**
 * Force of the first carrying row from the tight side, N.
 *
 * f_1 = 2 sinh(θ/2)/sinh(mθ) · [F cosh((m − ½) θ) + 2 y_m sinh(mθ/2) sinh((m − 1) θ/2)], in decaying exponentials.
 */
export function firstRowForce(sharing: Sharing): number {
  return endRowForce(sharing, sharing.slack)
}

/** Force of the last carrying row, N: the same seen from the slack end, with −y_0 for y_m. */
export function lastRowForce(sharing: Sharing): number {
  return endRowForce(sharing, -sharing.tight)
}

function endRowForce(sharing: Sharing, farLevel: number): number {
  const { rows, decay, halfSine, pull } = sharing
  if (rows === 1) return pull
  const whole = Math.exp(-rows * decay)
  const near = Math.exp(-0.5 * decay)
  const cosh = near * (1 + Math.exp(-(2 * rows - 1) * decay))
  // 2 sinh(mθ/2) sinh((m − 1)θ/2), over the same e^{mθ}/2
  const sinh = near * -Math.expm1(-rows * decay) * -Math.expm1(-(rows - 1) * decay)
  return (2 * halfSine * (pull * cosh + farLevel * sinh)) / (1 - whole * whole)
}

/** Largest force of a row, N: at the tight end, or at the slack end of a loop whose pitch is too short. */
export function largestRowForce(sharing: Sharing): number {
  return Math.max(firstRowForce(sharing), lastRowForce(sharing))
}
