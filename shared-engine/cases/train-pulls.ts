import type { Machine } from '../machine/parts.ts'
import { mostStages } from './stage-duty.ts'

/**
 * What goes through the train in each case, as the pull that it would be on one loop: at the input of every reduction
 * from the motor on, and last at the sprocket; N, without the service factor.
 */
export class TrainPulls {
  readonly launch = new Float64Array(mostStages + 1)
  readonly grip = new Float64Array(mostStages + 1)
  /** As `grip`, no limiter slipping. */
  readonly gripUncapped = new Float64Array(mostStages + 1)
  readonly stop = new Float64Array(mostStages + 1)
  readonly stopFree = new Float64Array(mostStages + 1)
}

/**
 * Pull of one loop at which a limiter slips.
 *
 * L_j = M T_slip G/(G_j r n).
 *
 * @param ratioToShaft G_j, from the motor to the limiter's shaft
 * @returns N; Infinity without a limiter
 * *Source:* `docs/model.md` §6.
 */
export function slipPullOf(machine: Machine, slipTorque: number | null, ratioToShaft: number): number {
  if (slipTorque === null) return Infinity
  const { motor, train, track } = machine
  return (motor.count * slipTorque * train.ratio) / (ratioToShaft * track.radius * track.count)
}

/**
 * What limiters leave of the pull of a jam at the sprocket.
 *
 * F_e = min(P_m, all L_j).
 *
 * @param motorPull P_m, N
 * @returns N
 * *Source:* `docs/model.md` §6.
 */
export function limitedPull(machine: Machine, motorPull: number): number {
  let through = motorPull
  let ratio = 1
  for (const stage of machine.stages) {
    ratio *= stage.ratio
    through = Math.min(through, slipPullOf(machine, stage.slipTorque, ratio))
  }
  return through
}

/**
 * Fills what a jam puts through: the motor's pull, or that of the limiters before.
 *
 * A_k = min(P_m, L_j of j < k).
 *
 * @param motorPull P_m, N
 * *Source:* `docs/model.md` §6.
 */
export function setLaunchPulls(pulls: Float64Array, machine: Machine, motorPull: number): void {
  const { stages } = machine
  let through = motorPull
  let ratio = 1
  for (let at = 0; at < stages.length; at += 1) {
    const stage = stages[at]
    if (stage === undefined) break
    pulls[at] = through
    ratio *= stage.ratio
    through = Math.min(through, slipPullOf(machine, stage.slipTorque, ratio))
  }
  pulls[stages.length] = through
}

/**
 * Fills what the ground lets through, losses of the reductions on the way down included.
 *
 * A_k = min(A_k of the jam, F_e/Π η_i), i ≥ k;  F_e = min(F_e of the jam, held).
 *
 * @param jam pulls of the jam
 * @param held N that the ground holds one loop with, its drag included
 * *Source:* `docs/model.md` §6.
 */
export function setGripPulls(pulls: Float64Array, jam: Float64Array, machine: Machine, held: number): void {
  const { stages } = machine
  const last = stages.length
  let needed = Math.min(jam[last] ?? NaN, held)
  pulls[last] = needed
  for (let at = last - 1; at >= 0; at -= 1) {
    needed /= stages[at]?.efficiency ?? 1
    pulls[at] = Math.min(jam[at] ?? NaN, needed)
  }
}
