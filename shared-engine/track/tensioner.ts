import { fullTurn } from '../constants.ts'
import type { LoopHold } from '../geometry/held-loop.ts'

/**
 * Tension of the slack side.
 *
 * fixed: T_s = max(q, N_0 − λ F);  sprung: T_s = N_0 + q.
 *
 * @param pull F, N
 * @param centrifugal q = m′ v_b², N: a loop cannot be slacker than its own ring
 * @returns N
 * *Source:* the loop's whole stretch is conserved on a fixed tensioner.
 */
export function slackTension(hold: LoopHold, pull: number, centrifugal: number): number {
  if (hold.tensioner === 'sprung') return hold.pretension + centrifugal
  return Math.max(centrifugal, hold.pretension - hold.tightShare * pull)
}

/**
 * Part of the slack side's tension that presses the loop onto its wheels.
 *
 * fixed: P = max(0, N_0 − λ F − q);  sprung: P = N_0.
 *
 * *Source:* as {@link slackTension}; the centrifugal part does not press.
 */
export function pressingTension(hold: LoopHold, pull: number, centrifugal: number): number {
  if (hold.tensioner === 'sprung') return hold.pretension
  return Math.max(0, hold.pretension - hold.tightShare * pull - centrifugal)
}

/**
 * Belt speed at which a fixed loop stops pressing on its wheels.
 *
 * √(max(0, N_0 − λ F)/m′).
 *
 * @param pull F, N: 0 running free
 * @param massPerMetre m′, kg/m
 * @returns m/s
 * *Source:* centrifugal tension of a running belt against what holds it down.
 */
export function liftOffSpeed(hold: LoopHold, pull: number, massPerMetre: number): number {
  return Math.sqrt(Math.max(0, hold.pretension - hold.tightShare * pull) / massPerMetre)
}

/**
 * How far a fixed loop stands off its wheels.
 *
 * max(0, q − N_0) L/(2π S).
 *
 * @param centrifugal q, N
 * @param length L, m
 * @param stiffness S, N
 * @returns m
 * *Source:* stretch of a turning ring.
 */
export function standOff(pretension: number, centrifugal: number, length: number, stiffness: number): number {
  return (Math.max(0, centrifugal - pretension) * length) / (fullTurn * stiffness)
}

/**
 * Belt speed at which the loop's own mass tears it.
 *
 * fixed: √(B/m′), since the pretension fades as the ring tightens;  sprung: √(max(0, B − N_0)/m′).
 *
 * @param breaking B, N
 * @returns m/s
 * *Source:* tension of a turning ring.
 */
export function burstSpeed(hold: LoopHold, breaking: number, massPerMetre: number): number {
  const left = hold.tensioner === 'fixed' ? breaking : breaking - hold.pretension
  return Math.sqrt(Math.max(0, left) / massPerMetre)
}
