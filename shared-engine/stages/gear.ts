import type { GearStage } from '../build/machine-parts.ts'
import { dynamicFactor } from '../reference/gears.ts'

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
 * Velocity factor of a stage at its driver's speed.
 *
 * @param speed ω, rad/s of the driver
 * @returns K_v at v = ω m z/2
 * *Source:* Shigley, eqs. 14-6a to 14-6d.
 */
export function stageDynamicFactor(stage: GearStage, speed: number): number {
  return dynamicFactor(stage.finish, (speed * stage.module * stage.driverTeeth) / 2)
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
  return (2 * torque) / (stage.module * stage.driverTeeth)
}

/**
 * Contact ratio of two full-depth spur wheels.
 *
 * ε = [√(r_a1² − r_b1²) + √(r_a2² − r_b2²) − (r_1 + r_2) sin φ]/(π m cos φ), addendum m; the module cancels.
 *
 * @returns teeth in contact on the mean
 * *Source:* ISO 21771 and any gear text; addendum 1.0: ISO 53.
 * @example contactRatioOf({ driverTeeth: 20, drivenTeeth: 40, ... 20° }) // 1.64
 */
export function contactRatioOf(
  stage: Pick<GearStage, 'driverTeeth' | 'drivenTeeth' | 'sinPressureAngle' | 'cosPressureAngle'>,
): number {
  const { sinPressureAngle: sine, cosPressureAngle: cosine } = stage
  const one = stage.driverTeeth / 2
  const other = stage.drivenTeeth / 2
  const approach = Math.sqrt((one + 1) * (one + 1) - one * cosine * one * cosine)
  const recess = Math.sqrt((other + 1) * (other + 1) - other * cosine * other * cosine)
  return (approach + recess - (one + other) * sine) / (Math.PI * cosine)
}

/**
 * Fewest teeth of the smaller wheel that clear the larger one's tips.
 *
 * N = 2/((1 + 2u) sin²φ) · (u + √(u² + (1 + 2u) sin²φ)), u ≥ 1 the ratio of the pair; not rounded.
 *
 * @returns teeth
 * *Source:* Shigley, eq. 13-11, with k = 1.
 */
export function fewestTeethOf(
  stage: Pick<GearStage, 'driverTeeth' | 'drivenTeeth' | 'sinPressureAngle'>,
): number {
  const ratio =
    Math.max(stage.driverTeeth, stage.drivenTeeth) / Math.min(stage.driverTeeth, stage.drivenTeeth)
  const square = stage.sinPressureAngle * stage.sinPressureAngle
  const inside = (1 + 2 * ratio) * square
  return (2 * (ratio + Math.sqrt(ratio * ratio + inside))) / inside
}
