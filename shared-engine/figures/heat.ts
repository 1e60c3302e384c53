import type { Evaluation } from '../cases/evaluation.ts'
import { setHeatTimes } from '../cases/heat-times.ts'
import { knowsSwitching } from '../motor/controller-loss.ts'
import type { Machine } from '../machine/parts.ts'
import { flowAt } from '../heat/cold-flow.ts'
import { toEngine } from '../units/convert.ts'
import { figureRows } from './figure.ts'

const litrePerMinute = toEngine(1, 'flow', 'L/min')

/** Temperatures of the drive pattern, and how long the motor bears what. */
export class HeatFigures {
  steadyMotorC = NaN
  steadyWindingC = NaN
  steadyCaseC = NaN
  caseAtLimitC = NaN
  secondsToMotorLimit = NaN
  coolantFeedC = NaN
  coolantHotC = NaN
  coolantRiseK = NaN
  steadyControllerC = NaN
  steadyControllerAtLeastC = NaN
  holdMotorAmps = NaN
  secondsToHoldLimit = NaN
  secondsToLaunchLimit = NaN
  secondsToPivotLimit = NaN
  caseHoldLimitC = NaN
  caseLaunchLimitC = NaN
  casePivotLimitC = NaN
  labelMotorC = NaN
  coldFlowLPerMin = NaN
  packHeatWatts = NaN
  packEndC = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setHeatFigures(values: HeatFigures, e: Evaluation, machine: Machine): void {
  const { heat, times } = e
  setHeatTimes(times, machine, heat, e.pattern)
  values.steadyMotorC = heat.end.hottest
  values.steadyWindingC = heat.end.winding
  values.steadyCaseC = heat.nodes.two ? heat.end.case : NaN
  values.caseAtLimitC = times.caseAtLimit
  values.secondsToMotorLimit = times.secondsToLimit
  const circuit = machine.cooling !== null
  values.coolantFeedC = circuit ? heat.feed : NaN
  values.coolantHotC = heat.hot
  values.coolantRiseK = circuit ? heat.hot - heat.feed : NaN
  values.steadyControllerC = knowsSwitching(machine.controller) ? heat.controller : NaN
  values.steadyControllerAtLeastC = heat.controller
  values.holdMotorAmps = times.hold.amps
  values.secondsToHoldLimit = times.hold.seconds
  values.secondsToLaunchLimit = times.launch.seconds
  values.secondsToPivotLimit = times.pivot.seconds
  values.caseHoldLimitC = times.hold.case
  values.caseLaunchLimitC = times.launch.case
  values.casePivotLimitC = times.pivot.case
  values.labelMotorC = times.label
  values.coldFlowLPerMin =
    machine.cooling === null ? NaN : flowAt(machine.cooling, machine.ground.airTemperature) / litrePerMinute
  values.packHeatWatts = e.packHeat
  values.packEndC = e.packEnd
}

export const heatFigures = figureRows(new HeatFigures(), setHeatFigures, {
  steadyMotorC: ['Motor, hottest in the pattern', 'temperature'],
  steadyWindingC: ['Winding then', 'temperature'],
  steadyCaseC: ['Case then', 'temperature'],
  caseAtLimitC: ['Case when the motor is at its limit', 'temperature'],
  secondsToMotorLimit: ['Time to the motor’s limit', 'duration'],
  coolantFeedC: ['Coolant that feeds the motors', 'temperature'],
  coolantHotC: ['Coolant, hottest', 'temperature'],
  coolantRiseK: ['Coolant’s warming in one round', 'temperatureDifference'],
  steadyControllerC: ['Controller, hottest in the pattern', 'temperature'],
  steadyControllerAtLeastC: ['Controller, at least', 'temperature'],
  holdMotorAmps: ['Current that holds it on the slope', 'amps'],
  secondsToHoldLimit: ['Time to the limit, holding', 'duration'],
  secondsToLaunchLimit: ['Time to the limit, jam or start', 'duration'],
  secondsToPivotLimit: ['Time to the limit, pivot turn', 'duration'],
  caseHoldLimitC: ['Case then, holding', 'temperature'],
  caseLaunchLimitC: ['Case then, jam or start', 'temperature'],
  casePivotLimitC: ['Case then, pivot turn', 'temperature'],
  labelMotorC: ['Winding at the label’s current', 'temperature'],
  coldFlowLPerMin: ['Coolant flow at the start', 'litresPerMinute'],
  packHeatWatts: ['Heat in the cells', 'watts'],
  packEndC: ['Pack at the end of a charge', 'temperature'],
})
