import type { StopSpring } from '../geometry/stop-spring.ts'

/**
 * Twice the energy that a load holds the spring with.
 *
 * p(m) = m²/κ_1 + δ max(0, m − F_s)².
 *
 * @param load m, N
 * @returns N·m
 * *Source:* integral of the spring's force.
 */
export function heldEnergy(spring: StopSpring, load: number): number {
  const past = Math.max(0, load - spring.slackAt)
  return (load * load) / spring.earlyStiffness + spring.relief * past * past
}

/**
 * Force at which a mass that runs into the spring stops, while a steady pull goes on.
 *
 * f(L, w) = L + √(κ [w + δ max(0, F_s − L)²]) where that is at least F_s, else L + √(κ_1 w).
 *
 * @param pull L, N
 * @param energy w, N·m: twice the energy of motion, with what the spring holds already
 * @returns N
 * *Source:* energy; rigid train, no damping, all rows at once: an upper bound for this span, assumption.
 */
export function stopForce(spring: StopSpring, pull: number, energy: number): number {
  const short = Math.max(0, spring.slackAt - pull)
  const late = pull + Math.sqrt(spring.stiffness * (energy + spring.relief * short * short))
  return late >= spring.slackAt ? late : pull + Math.sqrt(spring.earlyStiffness * energy)
}

/**
 * The energy that {@link stopForce} turns into a force: its inverse.
 *
 * w(F, L) = (F − L)²/κ_1 + δ max(0, (F − L)² − max(0, F_s − L)²).
 *
 * @param force F, N
 * @param pull L, N
 * @returns N·m, twice the energy
 * *Source:* as {@link stopForce}.
 */
export function stopEnergy(spring: StopSpring, force: number, pull: number): number {
  const over = force - pull
  const short = Math.max(0, spring.slackAt - pull)
  return (over * over) / spring.earlyStiffness + spring.relief * Math.max(0, over * over - short * short)
}
