import type { GearStage } from './machine.ts'
import { dynamicFactor } from '../../reference/gears.ts'

/** Contact ratio below which teeth let go of each other too early. *Source:* common practice, no source. */
export const leastContactRatio = 1.2

/**
 * Lewis bending stress of a spur tooth.
 *
 * σ = K_A K_v W_t/(b m Y).
 *
 * @param tangentialForce K_A W_t, N, service factor included
 * @param faceWidth b, m
 * @param module m, m
 * @param form Y
 * @param dynamic K_v
 * @returns Pa
 * *Source:* Shigley's Mechanical Engineering Design, eq. 14-8 (metric).
 */
export function lewisStress(
  tangentialForce: number,
  faceWidth: number,
  module: number,
  form: number,
  dynamic: number,
): number {
  return (dynamic * tangentialForce) / (faceWidth * module * form)
}

/**
 * Bending of the wheel that bears less, by {@link lewisStress}: in any case of load the same one.
 *
 * @param force K_A W_t, N, service factor included
 * @param dynamic K_v
 * @returns Pa
 */
export function bendingStress(stage: GearStage, force: number, dynamic: number): number {
  return (dynamic * force) / stage.bendingArea
}

/**
 * Velocity factor of a stage at its driver's speed.
 *
 * @param speed ω, rad/s of the driver
 * @returns K_v at v = ω m z/2
 * *Source:* Shigley, eqs. 14-6a to 14-6d.
 */
export function stageDynamicFactor(stage: GearStage, speed: number): number {
  return dynamicFactor(stage.finish, speed * stage.driverRadius)
}

/**
 * Tangential force at the driver's pitch circle.
 *
 * W_t = T/r, r = m z/2.
 *
 * @param torque N·m into the stage
 * @returns N
 * *Source:* Shigley, sec. 13-14.
 */
export function tangentialForce(stage: GearStage, torque: number): number {
  return torque / stage.driverRadius
}
