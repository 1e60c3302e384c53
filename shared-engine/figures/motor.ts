import { rpmOf } from '../units/rpm.ts'
import type { Figure } from './figure.ts'

/** Reductions, free speed and standstill. */
export const motorFigures = [
  { name: 'ratio', label: 'Overall ratio', kind: 'none', value: (_e, machine) => machine.train.ratio },
  {
    name: 'efficiency',
    label: 'Efficiency of the reductions',
    kind: 'fraction',
    value: (_e, machine) => machine.train.efficiency,
  },
  {
    name: 'advancePerMotorTurnM',
    label: 'Advance per motor turn',
    kind: 'length',
    value: (_e, machine) => machine.track.advance / machine.train.ratio,
  },
  { name: 'ruleOfThumbRpm', label: 'Kv times volts', kind: 'rpm', value: (e) => rpmOf(e.ruleOfThumbSpeed) },
  { name: 'freeRpm', label: 'Free-running rpm', kind: 'rpm', value: (e) => rpmOf(e.worstFreeSpeed) },
  {
    name: 'electricalRpm',
    label: 'Electrical rpm',
    kind: 'rpm',
    value: (e, machine) => rpmOf(e.worstFreeSpeed) * machine.motor.polePairs,
  },
  {
    name: 'throttleForRatedRpmPercent',
    label: 'Throttle that keeps to the rated rpm',
    kind: 'percent',
    value: (e) => 100 * e.throttleForRated,
  },
  { name: 'stallMotorAmps', label: 'Stall current', kind: 'amps', value: (e) => e.stallAmps },
  { name: 'launchMotorAmps', label: 'Launch current', kind: 'amps', value: (e) => e.launchAmps },
  {
    name: 'launchSprocketTorqueNm',
    label: 'Launch torque at the sprockets',
    kind: 'torque',
    value: (e) => e.launchSprocketTorque,
  },
] as const satisfies readonly Figure[]
