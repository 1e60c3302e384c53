import type { GearStage, RootStrength } from './machine.ts'
import { flankPressure } from '../flank.ts'
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
 * @param root of the strength that it is held against
 * @param force K_A W_t, N, service factor included
 * @param dynamic K_v
 * @returns Pa
 */
export function bendingStress(root: RootStrength, force: number, dynamic: number): number {
  return (dynamic * force) / root.area
}

/**
 * Pressure between the flanks of a pair.
 *
 * σ_H = C_p √[K_A K_v T/(r_b1 b) · (1/ρ_1 + 1/ρ_2)].
 *
 * @param torque K_A T, N·m into the stage
 * @param dynamic K_v
 * @returns Pa
 * *Source:* Shigley, eqs. 14-13 and 14-14.
 */
export function flankStress(stage: GearStage, torque: number, dynamic: number): number {
  const { module, mesh, faceWidth } = stage
  const normalForce = (dynamic * torque) / (module * mesh.driverBase)
  return flankPressure(stage.elasticCoefficient, normalForce, faceWidth, mesh.curvature / module)
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
