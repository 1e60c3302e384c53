import type { Machine } from '../machine/parts.ts'
import { copperTemperatureCoefficient } from '../constants.ts'
import { referenceTemperature } from '../motor/constants.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { SteadyHeat, setSteadyHeat } from './steady-heat.ts'

/** Temperatures of motor and controller from a cold start at one steady motor current. */
export interface WarmUp {
  readonly seconds: readonly number[]
  /** °C. */
  readonly motor: readonly number[]
  /** °C; null without the controller's entries. */
  readonly controller: readonly number[] | null
  /** s until the motor's limit; null where never. */
  readonly secondsToLimit: number | null
  /** °C; null in thermal runaway. */
  readonly steady: number | null
  /** °C. */
  readonly sink: number
}

/**
 * Warm-up at a steady motor current, from the sink's temperature.
 *
 * T(t) = T_s + (p/a)(e^{a t/C} − 1), a = I² R_20 α − 1/R_th, p = P_fe + I² R_20 [1 + α (T_s − 20)].
 *
 * @param amps I, A of one motor: heat follows motor current, not pack current
 * @param ironLoss P_fe, W of one motor
 * @param cooled with the build's cooling circuit, or as if it were off
 * @returns null where the motor's heat capacity or thermal resistance is not given
 * *Source:* `docs/model.md` §7, the linear equation solved.
 */
export function warmUpCurve(
  machine: Machine,
  amps: number,
  ironLoss: number,
  cooled: boolean,
  count = 121,
): WarmUp | null {
  const { motor, controller } = machine
  if (motor.heatCapacity === null || motor.thermalResistance === null) return null
  const heat = new SteadyHeat()
  const shown = cooled ? machine : { ...machine, cooling: null }
  setSteadyHeat(heat, shown, amps / machine.service.loadShare, ironLoss)
  const copper = amps * amps * motor.resistance
  const growth = copper * copperTemperatureCoefficient - 1 / motor.thermalResistance
  const start = ironLoss + copper * (1 + copperTemperatureCoefficient * (heat.sink - referenceTemperature))
  const seconds = timesOf(heat, motor.heatCapacity, motor.thermalResistance, count)
  const risen = (time: number, rate: number): number => (rate === 0 ? time : Math.expm1(rate * time) / rate)
  const capacity = motor.heatCapacity
  return {
    seconds,
    motor: seconds.map((time) => heat.sink + (start / capacity) * risen(time, growth / capacity)),
    controller: controllerOf(machine, heat, seconds, amps, controller.resistance),
    secondsToLimit: finiteOrNull(heat.secondsToMotorLimit),
    steady: finiteOrNull(heat.motorTemperature),
    sink: heat.sink,
  }
}

/** Long enough to see where it leads: half again past the limit, or four time constants. */
function timesOf(heat: SteadyHeat, capacity: number, thermalResistance: number, count: number): number[] {
  const settled = 4 * capacity * thermalResistance
  const limit = heat.secondsToMotorLimit
  const end = Number.isFinite(limit) && limit > 0 ? Math.min(settled, 1.5 * limit) : settled
  return Array.from({ length: count }, (_, index) => (end * index) / (count - 1))
}

function controllerOf(
  machine: Machine,
  heat: SteadyHeat,
  seconds: readonly number[],
  amps: number,
  resistance: number,
): number[] | null {
  const { heatCapacity, thermalResistance } = machine.controller
  if (heatCapacity === null || thermalResistance === null) return null
  const rise = thermalResistance * amps * amps * resistance
  return seconds.map((time) => heat.sink - rise * Math.expm1(-time / (heatCapacity * thermalResistance)))
}
