import { setTravel } from '../cases/travel.ts'
import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { figureRows } from './figure.ts'
import { kilo, secondsPerMinute } from '../units/factors.ts'

/** Level travel at half of the top speed. */
export class CruiseFigures {
  cruiseHalfTopPackAmps = NaN
  cruiseHalfTopMinutes = NaN
  cruiseHalfTopKilometres = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setCruiseFigures(values: CruiseFigures, e: Evaluation, machine: Machine): void {
  const { cruise } = e
  setTravel(e, machine)
  values.cruiseHalfTopPackAmps = cruise.packAmps
  values.cruiseHalfTopMinutes = cruise.seconds / secondsPerMinute
  values.cruiseHalfTopKilometres = cruise.metres / kilo
}

export const cruiseFigures = figureRows(new CruiseFigures(), setCruiseFigures, {
  cruiseHalfTopPackAmps: ['Pack current at half speed', 'amps'],
  cruiseHalfTopMinutes: ['Run time at half speed', 'minutes'],
  cruiseHalfTopKilometres: ['Range at half speed', 'kilometres'],
})
