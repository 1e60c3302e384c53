import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { rpmOf } from '../units/rpm.ts'
import { figureRows } from './figure.ts'

/** Teeth and loops. */
export class TrackFigures {
  teethEngaged = NaN
  toothSharePercent = NaN
  toothForceN = NaN
  toothShearPa = NaN
  toothBendingPa = NaN
  toothBearingPa = NaN
  loopTensionN = NaN
  burstBeltSpeedMps = NaN
  burstMotorRpm = NaN
  loopPretensionN = NaN
  pitchErrorM = NaN
  liftOffBeltSpeedMps = NaN
  liftOffMotorRpm = NaN
  loopGrowthFreeM = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setTrackFigures(values: TrackFigures, e: Evaluation, machine: Machine): void {
  values.teethEngaged = machine.track.engagedTeeth
  values.toothSharePercent = 100 * e.toothShare
  values.toothForceN = e.toothForce
  values.toothShearPa = e.toothShear
  values.toothBendingPa = e.toothBending
  values.toothBearingPa = e.toothBearing
  values.loopTensionN = e.loopTension
  values.burstBeltSpeedMps = e.burstSpeed
  values.burstMotorRpm = rpmOf(e.burstSpeed * e.line.motorPerBelt)
  values.loopPretensionN = machine.track.hold.pretension
  values.pitchErrorM = machine.track.pitchError
  values.liftOffBeltSpeedMps = e.liftOffSpeed
  values.liftOffMotorRpm = rpmOf(e.liftOffSpeed * e.line.motorPerBelt)
  values.loopGrowthFreeM = e.loopGrowthFree
}

export const trackFigures = figureRows(new TrackFigures(), setTrackFigures, {
  teethEngaged: ['Teeth engaged', 'count'],
  toothSharePercent: ['Share of the most loaded row', 'percent'],
  toothForceN: ['Force on the most loaded tooth', 'force'],
  toothShearPa: ['Tooth shear', 'stress'],
  toothBendingPa: ['Tooth bending', 'stress'],
  toothBearingPa: ['Tooth flank pressure', 'stress'],
  loopTensionN: ['Loop tension', 'force'],
  burstBeltSpeedMps: ['Belt speed that bursts the loop', 'speed'],
  burstMotorRpm: ['Motor rpm that bursts the loop', 'rpm'],
  loopPretensionN: ['Tension of the loop at rest', 'force'],
  pitchErrorM: ['Loop’s pitch less the sprocket’s', 'length'],
  liftOffBeltSpeedMps: ['Belt speed that lifts the loop off', 'speed'],
  liftOffMotorRpm: ['Motor rpm that lifts the loop off', 'rpm'],
  loopGrowthFreeM: ['Loop off its wheels, running free', 'length'],
})
