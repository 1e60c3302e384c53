import { setStops } from '../cases/braking-step.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { figureRows } from './figure.ts'

/** Stops from top speed with all brakes. */
export class StopFigures {
  stopMetres = NaN
  stopSeconds = NaN
  stopEnergyBackJ = NaN
  stopDownhillMetres = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setStopFigures(values: StopFigures, e: Evaluation, machine: Machine): void {
  const { braking } = e
  setStops(braking, machine, e, e.top)
  values.stopMetres = braking.level.metres
  values.stopSeconds = braking.level.seconds
  values.stopEnergyBackJ = braking.level.energyBack
  values.stopDownhillMetres = braking.downhill.metres
}

export const stopFigures = figureRows(new StopFigures(), setStopFigures, {
  stopMetres: ['Stop from top speed, level', 'distance'],
  stopSeconds: ['Time of that stop', 'time'],
  stopEnergyBackJ: ['Energy that it brings back', 'energy'],
  stopDownhillMetres: ['Stop from top speed, downhill', 'distance'],
})
