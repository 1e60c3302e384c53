import type { Machine } from '../machine/parts.ts'
import { angularSpeedOf } from '../units/rpm.ts'
import { referenceTemperature, torqueConstantAt, windingResistanceAt } from './constants.ts'

/**
 * Speed of a motor whose shaft is free.
 *
 * ω_f(δ) = [δ V_0 − I_nl (1 − β) R]/(K_t + β I_nl R/ω_ref),  R = R_s + M δ² R_b; 0 where negative.
 *
 * @param volts V_0, V
 * @param temperature °C of winding and magnets
 * @param duty δ, 0 to 1; a current limit plays no part
 * @returns rad/s
 * *Source:* Drela, First-Order DC Electric Motor Model, set T = 0; `docs/model.md` §3.
 */
export function freeSpeedAt(machine: Machine, volts: number, temperature: number, duty: number): number {
  const { motor, controller, pack } = machine
  const resistance =
    windingResistanceAt(motor.resistance, temperature) +
    controller.resistance +
    motor.count * duty * duty * pack.resistance
  const held = duty * volts - motor.noLoadAmps * (1 - motor.viscousShare) * resistance
  const perSpeed =
    torqueConstantAt(motor, temperature) +
    (motor.viscousShare * motor.noLoadAmps * resistance) / motor.referenceSpeed
  return Math.max(0, held / perSpeed)
}

/**
 * The over-rev check's speed: pack full, nothing else drawing, throttle at its cap, motor cold or as hot as it may be,
 * whichever spins faster.
 *
 * @returns rad/s
 * *Source:* `docs/model.md` §3.
 */
export function worstFreeSpeed(machine: Machine): number {
  const { pack, motor, controller } = machine
  return Math.max(
    freeSpeedAt(machine, pack.fullVolts, referenceTemperature, controller.throttleCap),
    freeSpeedAt(machine, pack.fullVolts, motor.maxTemperature, controller.throttleCap),
  )
}

/**
 * Smallest duty at which the free speed reaches a given one, at one temperature.
 *
 * The smaller root of A M R_b δ² − V_0 δ + A R_s + ω K_t = 0,  A = I_nl [(1 − β) + β ω/ω_ref].
 *
 * @param speed ω, rad/s
 * @returns duty, may be above 1; NaN where no duty reaches it
 */
function dutyForFreeSpeed(machine: Machine, speed: number, temperature: number): number {
  const { motor, controller, pack } = machine
  const seriesResistance = windingResistanceAt(motor.resistance, temperature) + controller.resistance
  const noLoadAmps =
    motor.noLoadAmps * (1 - motor.viscousShare + (motor.viscousShare * speed) / motor.referenceSpeed)
  const needed = noLoadAmps * seriesResistance + speed * torqueConstantAt(motor, temperature)
  const inside = pack.fullVolts * pack.fullVolts - 4 * motor.count * noLoadAmps * pack.resistance * needed
  return (2 * needed) / (pack.fullVolts + Math.sqrt(inside))
}

/**
 * Throttle that keeps the worst-case free speed at the motor's rated one, whatever the cap.
 *
 * @param ratedSpeed rad/s
 * @returns duty of at most 1; NaN where no throttle reaches that speed
 * *Source:* `docs/model.md` §3; the worst case over temperature is the first to get there.
 */
export function throttleForFreeSpeed(machine: Machine, ratedSpeed: number): number {
  const cold = dutyForFreeSpeed(machine, ratedSpeed, referenceTemperature)
  const hot = dutyForFreeSpeed(machine, ratedSpeed, machine.motor.maxTemperature)
  let least = Infinity
  if (cold <= 1) least = cold
  if (hot < least && hot <= 1) least = hot
  return least === Infinity ? NaN : least
}

/**
 * The throttle at which the free motor just reaches its rated speed: {@link throttleForFreeSpeed} of that speed.
 *
 * *Source:* `docs/model.md` §3.
 */
export function throttleForRated(machine: Machine): number {
  return throttleForFreeSpeed(machine, angularSpeedOf(machine.motor.ratedMaxRpm))
}
