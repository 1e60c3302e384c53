import { setTravel } from '../cases/travel.ts'
import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { figureRows } from './figure.ts'

/** The run to top speed: apart from top speed itself, which a search asks for alone. */
export class RunFigures {
  secondsToHalfTop = NaN
  secondsTo80Top = NaN
  metresTo80Top = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with; NaN where one does not exist. */
export function setRunFigures(values: RunFigures, e: Evaluation, machine: Machine): void {
  setTravel(e, machine)
  const { run } = e
  values.secondsToHalfTop = run.secondsToHalf
  values.secondsTo80Top = run.secondsTo80
  values.metresTo80Top = run.metresTo80
}

export const runFigures = figureRows(new RunFigures(), setRunFigures, {
  secondsToHalfTop: ['Time to half of top speed', 'time'],
  secondsTo80Top: ['Time to 80 % of top speed', 'time'],
  metresTo80Top: ['Distance to 80 % of top speed', 'distance'],
})
