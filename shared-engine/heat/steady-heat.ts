import type { Machine } from '../machine/parts.ts'
import { windingResistanceAt } from '../motor/constants.ts'
import { coolantRise, sinkTemperature, steadyControllerTemperature } from './circuit.ts'
import { secondsToMotorLimit, steadyMotorTemperature } from './motor.ts'

/** Heat of a long run at a share of the equilibrium's current: NaN without an equilibrium or the entries. */
export class SteadyHeat {
  /** A RMS of one motor. */
  amps = NaN
  /** W of one motor. */
  ironLoss = NaN
  /** W of all motors and controllers into the circuit. */
  circuitHeat = NaN
  /** °C. */
  sink = NaN
  /** K. */
  coolantRise = NaN
  /** °C; NaN in runaway too. */
  motorTemperature = NaN
  /** Whether the motor runs away: its loss grows faster than its heat leaves. */
  runaway = false
  /** s. */
  secondsToMotorLimit = NaN
  /** °C. */
  controllerTemperature = NaN
}

/**
 * Fills the heat of a run.
 *
 * I = loadShare · I_top;  P = M [P_fe + I² R_m(T_w) + I² R_esc].
 *
 * @param topAmps the equilibrium's current of one motor, A; NaN without one
 * @param ironLoss its iron and friction loss, W of one motor
 * *Source:* `docs/model.md` §7; the share is an assumption.
 */
export function setSteadyHeat(heat: SteadyHeat, machine: Machine, topAmps: number, ironLoss: number): void {
  const { motor, controller, service, cooling, ground } = machine
  const amps = service.loadShare * topAmps
  const winding = windingResistanceAt(motor.resistance, service.windingTemperature)
  heat.amps = amps
  heat.ironLoss = ironLoss
  heat.circuitHeat = motor.count * (ironLoss + amps * amps * (winding + controller.resistance))
  heat.sink = sinkTemperature(cooling, ground.airTemperature, heat.circuitHeat)
  heat.coolantRise = coolantRise(cooling, heat.circuitHeat)
  setMotorHeat(heat, machine)
  heat.controllerTemperature =
    controller.thermalResistance === null
      ? NaN
      : steadyControllerTemperature(heat.sink, controller.thermalResistance, amps, controller.resistance)
}

function setMotorHeat(heat: SteadyHeat, machine: Machine): void {
  const { thermalResistance, heatCapacity, resistance, maxTemperature } = machine.motor
  heat.motorTemperature = NaN
  heat.secondsToMotorLimit = NaN
  heat.runaway = false
  if (thermalResistance === null || Number.isNaN(heat.amps)) return
  heat.motorTemperature = steadyMotorTemperature(
    heat.sink,
    thermalResistance,
    heat.ironLoss,
    heat.amps,
    resistance,
  )
  heat.runaway = Number.isNaN(heat.motorTemperature)
  if (heatCapacity === null) return
  heat.secondsToMotorLimit = secondsToMotorLimit(
    heat.sink,
    thermalResistance,
    heatCapacity,
    heat.ironLoss,
    heat.amps,
    resistance,
    maxTemperature,
  )
}
