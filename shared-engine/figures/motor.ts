import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { throttleForRated } from '../motor/free-speed.ts'
import { rpmOf } from '../units/rpm.ts'
import { figureRows } from './figure.ts'

/** Reductions, free speed and standstill. */
export class MotorFigures {
  ratio = NaN
  efficiency = NaN
  advancePerMotorTurnM = NaN
  ruleOfThumbRpm = NaN
  freeRpm = NaN
  electricalRpm = NaN
  throttleForRatedRpmPercent = NaN
  stallMotorAmps = NaN
  launchMotorAmps = NaN
  launchSprocketTorqueNm = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setMotorFigures(values: MotorFigures, e: Evaluation, machine: Machine): void {
  values.ratio = machine.train.ratio
  values.efficiency = machine.train.efficiency
  values.advancePerMotorTurnM = machine.track.advance / machine.train.ratio
  values.ruleOfThumbRpm = rpmOf(e.ruleOfThumbSpeed)
  values.freeRpm = rpmOf(e.worstFreeSpeed)
  values.electricalRpm = values.freeRpm * machine.motor.polePairs
  values.throttleForRatedRpmPercent = 100 * throttleForRated(machine)
  values.stallMotorAmps = e.stallAmps
  values.launchMotorAmps = e.launchAmps
  values.launchSprocketTorqueNm = e.launchSprocketTorque
}

export const motorFigures = figureRows(new MotorFigures(), setMotorFigures, {
  ratio: ['Overall ratio', 'none'],
  efficiency: ['Efficiency of the reductions', 'fraction'],
  advancePerMotorTurnM: ['Advance per motor turn', 'length'],
  ruleOfThumbRpm: ['Kv times volts', 'rpm'],
  freeRpm: ['Free-running rpm', 'rpm'],
  electricalRpm: ['Electrical rpm', 'rpm'],
  throttleForRatedRpmPercent: ['Throttle that keeps to the rated rpm', 'percent'],
  stallMotorAmps: ['Stall current', 'amps'],
  launchMotorAmps: ['Launch current', 'amps'],
  launchSprocketTorqueNm: ['Launch torque at the sprockets', 'torque'],
})
