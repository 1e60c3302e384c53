import { copperTemperatureCoefficient } from '../constants.ts'
import { referenceTemperature } from '../motor/constants.ts'

/** Winding and case of a motor, and what lies between them and what cools it. One node: the case's capacity is 0. */
export class MotorNodes {
  /** Two nodes, or winding and case in one. */
  two = true
  /** J/K. */
  windingCapacity = NaN
  caseCapacity = NaN
  /** W/K from winding to case, and from the last node to the sink. */
  windingToCase = NaN
  toSink = NaN
}

/**
 * How the nodes' excess over the sink moves under a steady load: ẋ = A x + s. Kept as eigenvalues and eigenprojections,
 * which are real: a_wc a_cw > 0.
 *
 * *Source:* linear differential equations with constant coefficients; Sylvester's formula for a 2 by 2 matrix.
 */
export class NodeMotion {
  /** Eigenvalues of A, 1/s: the slower, or growing, and the faster. */
  slow = 0
  fast = 0
  /** Of the slower eigenvalue's projection, (A − λ_fast)/(λ_slow − λ_fast). */
  ww = 1
  wc = 0
  cw = 0
  cc = 0
  /** Source s = s_0 + s_1 T_sink into the winding, K/s and 1/s, and into the case, K/s. */
  windingSource = 0
  windingSourcePerSink = 0
  caseSource = 0
}

/**
 * Fills the motion of a motor's nodes.
 *
 * C_w dT_w/dt = I² R_20 [1 + α (T_w − 20)] − (T_w − T_c)/R_wc;  C_c dT_c/dt = P_fe + (T_w − T_c)/R_wc − (T_c − T_s)/R.
 * One node: C dT/dt = P_fe + I² R_20 [1 + α (T − 20)] − (T − T_s)/R.
 *
 * @param coldCopper I² R_20, W of one motor
 * @param iron P_fe, W of one motor
 * *Source:* heat balances of lumps; IEC 60028 for the copper; iron loss into the case: assumption.
 */
export function setNodeMotion(motion: NodeMotion, nodes: MotorNodes, coldCopper: number, iron: number): void {
  const { windingCapacity, caseCapacity, windingToCase, toSink } = nodes
  const growth = coldCopper * copperTemperatureCoefficient
  const copperAtZero = coldCopper * (1 - copperTemperatureCoefficient * referenceTemperature)
  motion.windingSourcePerSink = growth / windingCapacity
  if (!nodes.two) {
    motion.slow = (growth - toSink) / windingCapacity
    motion.fast = -Infinity
    motion.ww = 1
    motion.wc = motion.cw = motion.cc = 0
    motion.windingSource = (copperAtZero + iron) / windingCapacity
    motion.caseSource = 0
    return
  }
  const a = (growth - windingToCase) / windingCapacity
  const b = windingToCase / windingCapacity
  const c = windingToCase / caseCapacity
  const d = -(windingToCase + toSink) / caseCapacity
  const middle = 0.5 * (a + d)
  const half = 0.5 * (a - d)
  const spread = Math.sqrt(half * half + b * c)
  // The eigenvalues' product without the difference of near equals that a d − b c would be.
  const product =
    (windingToCase * toSink - growth * (windingToCase + toSink)) / (windingCapacity * caseCapacity)
  motion.fast = middle < 0 ? middle - spread : product / (middle + spread)
  motion.slow = middle < 0 ? product / motion.fast : middle + spread
  const apart = 0.5 / spread
  motion.ww = (half + spread) * apart
  motion.cc = (spread - half) * apart
  motion.wc = b * apart
  motion.cw = c * apart
  motion.windingSource = copperAtZero / windingCapacity
  motion.caseSource = iron / caseCapacity
}

/**
 * (e^(λ t) − 1)/λ, t where λ is 0.
 *
 * *Source:* integral of the exponential.
 */
export function growthOver(rate: number, seconds: number): number {
  if (rate === 0) return seconds
  return rate === -Infinity ? 0 : Math.expm1(rate * seconds) / rate
}

/**
 * ∫ (e^(λ s) − 1)/λ ds from 0 to t, by its series where λ t is small.
 */
function doubleGrowth(rate: number, seconds: number, single: number): number {
  const x = rate * seconds
  if (Math.abs(x) > 0.02) return rate === -Infinity ? 0 : (single - seconds) / rate
  return seconds * seconds * (1 / 2 + x * (1 / 6 + x * (1 / 24 + x * (1 / 120 + x * (1 / 720 + x / 5040)))))
}

/** What one row of a pattern does with the nodes' excess over the sink: x → x + E x + p + q T_sink, and its integral. */
export class NodeStep {
  /** E = e^(A t) − 1. */
  ww = 0
  wc = 0
  cw = 0
  cc = 0
  /** p and q, K and 1. */
  winding = 0
  case = 0
  windingPerSink = 0
  casePerSink = 0
  /** ∫ of the excess next to the sink: of each K at the start, K·s, and of T_sink. */
  sinkFromWinding = 0
  sinkFromCase = 0
  sinkFixed = 0
  sinkPerSink = 0
}

/**
 * Fills what a motion does in a time.
 *
 * E = (e^(λ_s t) − 1) P_s + (e^(λ_f t) − 1) P_f;  forced: f(λ) = (e^(λ t) − 1)/λ in place of e^(λ t) − 1, times s.
 *
 * @param withIntegral whether the mean next to the sink is wanted: a circuit's, not the air's
 * *Source:* as {@link NodeMotion}.
 */
export function setNodeStep(
  step: NodeStep,
  motion: NodeMotion,
  nodes: MotorNodes,
  seconds: number,
  withIntegral: boolean,
): void {
  const { slow, fast, ww, wc, cw, cc } = motion
  const slowOnce = growthOver(slow, seconds)
  const fastOnce = growthOver(fast, seconds)
  const slowGrowth = slow * slowOnce
  const fastGrowth = fast === -Infinity ? -1 : fast * fastOnce
  // Projections: the slow one is (ww wc; cw cc), the fast one its complement (cc −wc; −cw ww).
  step.ww = slowGrowth * ww + fastGrowth * cc
  step.cc = nodes.two ? slowGrowth * cc + fastGrowth * ww : -1
  step.wc = (slowGrowth - fastGrowth) * wc
  step.cw = (slowGrowth - fastGrowth) * cw
  const windingOnce = slowOnce * ww + fastOnce * cc
  const caseOnce = slowOnce * cc + fastOnce * ww
  const crossOnce = slowOnce - fastOnce
  step.winding = windingOnce * motion.windingSource + crossOnce * wc * motion.caseSource
  step.windingPerSink = windingOnce * motion.windingSourcePerSink
  step.case = crossOnce * cw * motion.windingSource + caseOnce * motion.caseSource
  step.casePerSink = crossOnce * cw * motion.windingSourcePerSink
  if (!withIntegral) return
  const slowTwice = doubleGrowth(slow, seconds, slowOnce)
  const fastTwice = doubleGrowth(fast, seconds, fastOnce)
  if (!nodes.two) {
    step.sinkFromWinding = slowOnce
    step.sinkFromCase = 0
    step.sinkFixed = slowTwice * motion.windingSource
    step.sinkPerSink = slowTwice * motion.windingSourcePerSink
    return
  }
  const crossTwice = (slowTwice - fastTwice) * cw
  step.sinkFromWinding = crossOnce * cw
  step.sinkFromCase = caseOnce
  step.sinkFixed = crossTwice * motion.windingSource + (slowTwice * cc + fastTwice * ww) * motion.caseSource
  step.sinkPerSink = crossTwice * motion.windingSourcePerSink
}
