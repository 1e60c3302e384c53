import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { degreesOf } from '../units/factors.ts'
import { figureRows } from './figure.ts'

/** Where the weight is, what lifts the front, and where the machine falls over. */
export class BalanceFigures {
  cgHeightM = NaN
  cgAheadM = NaN
  weightTransferN = NaN
  spinUpLiftNm = NaN
  spinUpLiftSeconds = NaN
  tipBackDegrees = NaN
  tipSideDegrees = NaN
  soilPressurePa = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with; NaN where one does not exist. */
export function setBalanceFigures(values: BalanceFigures, e: Evaluation, machine: Machine): void {
  values.cgHeightM = machine.vehicle.centreHeight ?? NaN
  values.cgAheadM = machine.vehicle.centreAhead ?? NaN
  values.weightTransferN = e.footing.transferred
  values.spinUpLiftNm = e.spinUpLift.moment
  values.spinUpLiftSeconds = e.spinUpLift.seconds
  values.tipBackDegrees = degreesOf(e.tipBack)
  values.tipSideDegrees = degreesOf(e.tipSide)
  values.soilPressurePa = e.footing.groundPressure
}

export const balanceFigures = figureRows(new BalanceFigures(), setBalanceFigures, {
  cgHeightM: ['Height of the centre of mass', 'length'],
  cgAheadM: ['Centre of mass ahead of the rear edge', 'length'],
  weightTransferN: ['Weight that thrust moves to the tracks', 'force'],
  spinUpLiftNm: ['Nose-up moment while the loops spin up', 'torque'],
  spinUpLiftSeconds: ['How long that lasts', 'time'],
  tipBackDegrees: ['Slope on which it falls backwards', 'degrees'],
  tipSideDegrees: ['Side slope on which it falls over', 'degrees'],
  soilPressurePa: ['Pressure on the soil', 'pressure'],
})
