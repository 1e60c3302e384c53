import { setTravel } from '../cases/travel.ts'
import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { rpmOf } from '../units/rpm.ts'
import { figureRows } from './figure.ts'

/** Top speed, what it draws, and the run there. */
export class SpeedFigures {
  topSpeedMps = NaN
  topBeltSpeedMps = NaN
  topMotorRpm = NaN
  topMotorAmps = NaN
  topPackAmps = NaN
  topPackVolts = NaN
  topMotorEfficiency = NaN
  topOverallEfficiency = NaN
  topSlip = NaN
  peakAccelerationMps2 = NaN
  equivalentMassKg = NaN
  secondsToHalfTop = NaN
  secondsTo80Top = NaN
  metresTo80Top = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setSpeedFigures(values: SpeedFigures, e: Evaluation, machine: Machine): void {
  const { top, run } = e
  setTravel(e, machine)
  values.topSpeedMps = top.groundSpeed
  values.topBeltSpeedMps = top.beltSpeed
  values.topMotorRpm = rpmOf(top.motorSpeed)
  values.topMotorAmps = top.motorAmps
  values.topPackAmps = e.topPackAmps
  values.topPackVolts = e.topPackVolts
  values.topMotorEfficiency = e.topMotorEfficiency
  values.topOverallEfficiency = e.topOverallEfficiency
  values.topSlip = top.slip
  values.peakAccelerationMps2 = e.peakAcceleration
  values.equivalentMassKg = e.equivalentMass
  values.secondsToHalfTop = run.secondsToHalf
  values.secondsTo80Top = run.secondsTo80
  values.metresTo80Top = run.metresTo80
}

export const speedFigures = figureRows(new SpeedFigures(), setSpeedFigures, {
  topSpeedMps: ['Top speed', 'speed'],
  topBeltSpeedMps: ['Belt speed at top speed', 'speed'],
  topMotorRpm: ['Motor rpm at top speed', 'rpm'],
  topMotorAmps: ['Motor current at top speed', 'amps'],
  topPackAmps: ['Pack current at top speed', 'amps'],
  topPackVolts: ['Pack volts at top speed', 'volts'],
  topMotorEfficiency: ['Motor efficiency at top speed', 'fraction'],
  topOverallEfficiency: ['Pack to ground at top speed', 'fraction'],
  topSlip: ['Slip at top speed', 'fraction'],
  peakAccelerationMps2: ['Acceleration from rest', 'acceleration'],
  equivalentMassKg: ['Mass to accelerate', 'mass'],
  secondsToHalfTop: ['Time to half of top speed', 'time'],
  secondsTo80Top: ['Time to 80 % of top speed', 'time'],
  metresTo80Top: ['Distance to 80 % of top speed', 'distance'],
})
