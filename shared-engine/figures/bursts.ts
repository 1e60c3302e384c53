import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { spinUpSeconds } from '../vehicle/spin-up.ts'
import { figureRows } from './figure.ts'

/** Greatest currents that the ground lets happen, and what braking feeds back. */
export class BurstFigures {
  burstMotorAmps = NaN
  burstPackAmps = NaN
  burstPackVolts = NaN
  spinUpMotorAmps = NaN
  spinUpSeconds = NaN
  brakeMotorAmps = NaN
  brakeChargeAmps = NaN
  brakePackVolts = NaN
  creepMps = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setBurstFigures(values: BurstFigures, e: Evaluation, machine: Machine): void {
  const { bursts, braking } = e
  values.burstMotorAmps = bursts.motorAmps
  values.burstPackAmps = bursts.packAmps
  values.burstPackVolts = bursts.packVolts
  values.spinUpMotorAmps = bursts.spinUpAmps
  values.spinUpSeconds = spinUpSeconds(e, machine.vehicle.mass)
  values.brakeMotorAmps = braking.motorAmps
  values.brakeChargeAmps = braking.chargeAmps
  values.brakePackVolts = braking.packVolts
  values.creepMps = braking.creepSpeed
}

export const burstFigures = figureRows(new BurstFigures(), setBurstFigures, {
  burstMotorAmps: ['Motor current, most the ground allows', 'amps'],
  burstPackAmps: ['Pack current, most the ground allows', 'amps'],
  burstPackVolts: ['Pack volts then', 'volts'],
  spinUpMotorAmps: ['Motor current as a spin-up begins', 'amps'],
  spinUpSeconds: ['Time of a spin-up', 'time'],
  brakeMotorAmps: ['Motor current as a stop begins', 'amps'],
  brakeChargeAmps: ['Charging current then, full pack', 'amps'],
  brakePackVolts: ['Pack volts then', 'volts'],
  creepMps: ['Creep with shorted motors', 'speed'],
})
