import type { Machine } from '../machine/parts.ts'
import { torqueConstantAt, windingResistanceAt } from './constants.ts'

/**
 * Motors, controllers and pack at one throttle and temperature: amps and torque of one motor against its speed.
 * One object is filled again and again, so that a million candidates allocate nothing.
 */
export class DriveLine {
  /** δ, averaged duty asked for, 0 to 1. */
  duty = 0
  /** V_0, V, the pack's volts before the drive draws. */
  volts = 0
  /** R_b, Ω. */
  packResistance = 0
  /** M. */
  count = 1
  /** K_t, N·m/A. */
  torqueConstant = 0
  /** R_m, Ω. */
  motorResistance = 0
  /** R_s, Ω, motor and controller. */
  seriesResistance = 0
  /** R = R_s + M δ² R_b, Ω: what one motor sees. */
  loopResistance = 0
  /** A of the no-load current at rest. */
  noLoadBase = 0
  /** A per rad/s of the no-load current. */
  noLoadSlope = 0
  /** A of one motor; Infinity where resistance alone limits it. */
  currentLimit = Infinity
  /** rad/s below which the current limit acts; −Infinity without a limit. */
  cornerSpeed = -Infinity
}

/**
 * Fills a drive line.
 *
 * R = R_s + M δ² R_b;  corner where (δ V_0 − ω K_t)/R equals the limit: ω_c = (δ V_0 − I_lim R)/K_t.
 *
 * @param line to fill
 * @param volts V_0, V
 * @param temperature °C of winding and magnets
 * @param duty δ, 0 to 1
 * @param packResistance R_b, Ω; at the service temperature where left out
 * *Source:* Drela, First-Order DC Electric Motor Model, MIT, public notes; averaged duty: `docs/model.md` §3.
 */
export function setDriveLine(
  line: DriveLine,
  machine: Machine,
  volts: number,
  temperature: number,
  duty: number,
  packResistance = machine.pack.resistance,
): void {
  const { motor, controller } = machine
  line.duty = duty
  line.volts = volts
  line.packResistance = packResistance
  line.count = motor.count
  line.torqueConstant = torqueConstantAt(motor, temperature)
  line.motorResistance = windingResistanceAt(motor.resistance, temperature)
  line.seriesResistance = line.motorResistance + controller.resistance
  line.loopResistance = line.seriesResistance + motor.count * duty * duty * packResistance
  line.noLoadBase = motor.noLoadAmps * (1 - motor.viscousShare)
  line.noLoadSlope = (motor.noLoadAmps * motor.viscousShare) / motor.referenceSpeed
  line.currentLimit = controller.currentLimit
  line.cornerSpeed = (duty * volts - controller.currentLimit * line.loopResistance) / line.torqueConstant
}

/**
 * No-load current at a speed.
 *
 * I_0(ω) = I_nl [(1 − β) + β ω/ω_ref].
 *
 * @param speed ω, rad/s
 * @returns A of one motor
 * *Source:* Drela, First-Order DC Electric Motor Model, with a part growing with speed: `docs/model.md` §3.
 */
export function noLoadAmpsAt(line: DriveLine, speed: number): number {
  return line.noLoadBase + line.noLoadSlope * speed
}

/**
 * Current of one motor at a speed.
 *
 * I(δ, ω) = (δ V_0 − ω K_t)/(R_s + M δ² R_b), at most the controller's limit.
 *
 * @param speed ω, rad/s
 * @returns A, negative where the motor is driven faster than the duty turns it
 * *Source:* Drela, as above; duty averaged over pack and motor: `docs/model.md` §3.
 */
export function ampsAt(line: DriveLine, speed: number): number {
  if (speed < line.cornerSpeed) return line.currentLimit
  return (line.duty * line.volts - speed * line.torqueConstant) / line.loopResistance
}

/**
 * Duty that passes a current at a speed.
 *
 * The smaller root of M I R_b δ² − V_0 δ + c = 0, c = ω K_t + I R_s: δ = 2c/(V_0 + √(V_0² − 4 M I R_b c)).
 *
 * @param amps I of one motor, A
 * @param speed ω, rad/s
 * @returns duty, may be above 1; NaN where the pack cannot pass that current at any duty
 * *Source:* `docs/model.md` §3, from the averaged circuit; this form of the root loses no digits.
 */
export function dutyForAmps(line: DriveLine, amps: number, speed: number): number {
  const needed = speed * line.torqueConstant + amps * line.seriesResistance
  const left = line.volts * line.volts - 4 * line.count * amps * line.packResistance * needed
  // the most that the pack gives leaves nothing under the root, and rounding less than nothing
  const inside = left < 0 && left > -1e-12 * line.volts * line.volts ? 0 : left
  return (2 * needed) / (line.volts + Math.sqrt(inside))
}

/**
 * Duty in force at a speed: the throttle's, or less where the current limit acts.
 *
 * @param speed ω, rad/s
 * @returns duty, 0 to 1
 * *Source:* {@link dutyForAmps} below the corner.
 */
export function dutyAt(line: DriveLine, speed: number): number {
  return speed < line.cornerSpeed ? dutyForAmps(line, line.currentLimit, speed) : line.duty
}

/**
 * Shaft torque of one motor at a speed.
 *
 * T = K_t (I − I_0(ω)).
 *
 * @param speed ω, rad/s
 * @returns N·m
 * *Source:* Drela, First-Order DC Electric Motor Model, MIT, public notes.
 */
export function torqueAt(line: DriveLine, speed: number): number {
  return line.torqueConstant * (ampsAt(line, speed) - noLoadAmpsAt(line, speed))
}
