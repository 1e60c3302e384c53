import type { Evaluation } from '../cases/evaluation.ts'
import { rpmOf } from '../units/rpm.ts'
import { figureRows } from './figure.ts'

/** Top speed and what it draws. */
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
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setSpeedFigures(values: SpeedFigures, e: Evaluation): void {
  const { top } = e
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
})
