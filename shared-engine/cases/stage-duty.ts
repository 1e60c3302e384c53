import type { Machine } from '../machine/parts.ts'

/** Most reductions that a build may hold. *Source:* `docs/model.md` §1. */
export const mostStages = 6

/** What one reduction bears, service factor included: in a jam (standstill, every efficiency 1) and at top speed. */
export class StageDuty {
  /** K_A T into the stage, N·m, launch. */
  launchTorque = NaN
  /** K_A T of the driven shaft, N·m, launch. */
  launchDrivenTorque = NaN
  /** The same at top speed; NaN where there is none. */
  topTorque = NaN
  topDrivenTorque = NaN
  /** rad/s of the driver at top speed. */
  topSpeed = NaN
}

/**
 * Fills what every reduction bears.
 *
 * T_k = T_motor Π ratio (Π efficiency at top speed) of the stages before; a driven shaft carries the torque into the next
 * one, its own stage's efficiency included.
 *
 * @param duties one for each stage, from the motor on
 * @param launchTorque N·m of one motor
 * @param topTorque, topSpeed N·m and rad/s of one motor at top speed; NaN where there is none
 * *Source:* `docs/model.md` §4.
 */
export function setStageDuties(
  duties: readonly StageDuty[],
  machine: Machine,
  launchTorque: number,
  topTorque: number,
  topSpeed: number,
): void {
  let launch = machine.service.factor * launchTorque
  let top = machine.service.factor * topTorque
  let speed = topSpeed
  for (let index = 0; index < machine.stages.length; index += 1) {
    const stage = machine.stages[index]
    const duty = duties[index]
    if (stage === undefined || duty === undefined) break
    duty.launchTorque = launch
    duty.topTorque = top
    duty.topSpeed = speed
    launch *= stage.ratio
    top *= stage.ratio * stage.efficiency
    speed /= stage.ratio
    duty.launchDrivenTorque = launch
    duty.topDrivenTorque = top
  }
}
