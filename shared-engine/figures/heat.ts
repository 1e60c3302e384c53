import type { Evaluation } from '../cases/evaluation.ts'
import { figureRows } from './figure.ts'

/** Temperatures of a long run. */
export class HeatFigures {
  steadyMotorC = NaN
  secondsToMotorLimit = NaN
  steadyControllerC = NaN
  coolantRiseK = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setHeatFigures(values: HeatFigures, e: Evaluation): void {
  const { heat } = e
  values.steadyMotorC = heat.motorTemperature
  values.secondsToMotorLimit = heat.secondsToMotorLimit
  values.steadyControllerC = heat.controllerTemperature
  values.coolantRiseK = heat.coolantRise
}

export const heatFigures = figureRows(new HeatFigures(), setHeatFigures, {
  steadyMotorC: ['Motor temperature of a long run', 'temperature'],
  secondsToMotorLimit: ['Time to the motor’s limit', 'duration'],
  steadyControllerC: ['Controller temperature of a long run', 'temperature'],
  coolantRiseK: ['Coolant warming', 'temperatureDifference'],
})
