import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { figureRows } from './figure.ts'

/** Thrust, ground, lifting and turning. */
export class ForceFigures {
  startThrustN = NaN
  gripThrustN = NaN
  sinkageM = NaN
  groundResistanceN = NaN
  airDensity = NaN
  frontLiftThrustN = NaN
  frontLiftThrottlePercent = NaN
  pivotThrustN = NaN
  pivotMotorAmps = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setForceFigures(values: ForceFigures, e: Evaluation, machine: Machine): void {
  values.startThrustN = e.startThrust
  values.gripThrustN = e.footing.gripThrust
  values.sinkageM = e.footing.sinkage
  values.groundResistanceN = e.footing.standingResistance
  values.airDensity = machine.ground.airDensity
  values.frontLiftThrustN = e.frontLiftThrust
  values.frontLiftThrottlePercent = 100 * e.frontLiftDuty
  values.pivotThrustN = e.pivotThrust
  values.pivotMotorAmps = e.pivotAmps
}

export const forceFigures = figureRows(new ForceFigures(), setForceFigures, {
  startThrustN: ['Motor thrust at rest', 'force'],
  gripThrustN: ['Most thrust the ground takes', 'force'],
  sinkageM: ['Sinkage', 'length'],
  groundResistanceN: ['Resistance at rest', 'force'],
  airDensity: ['Air density', 'density'],
  frontLiftThrustN: ['Thrust that lifts the front', 'force'],
  frontLiftThrottlePercent: ['Throttle that lifts the front', 'percent'],
  pivotThrustN: ['Push per side to turn on the spot', 'force'],
  pivotMotorAmps: ['Motor current turning on the spot', 'amps'],
})
