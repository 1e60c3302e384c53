import type { Figure } from './figure.ts'

/** Temperatures of a long run, and cruising. */
export const heatFigures = [
  {
    name: 'steadyMotorC',
    label: 'Motor temperature of a long run',
    kind: 'temperature',
    value: (e) => e.heat.motorTemperature,
  },
  {
    name: 'secondsToMotorLimit',
    label: 'Time to the motor’s limit',
    kind: 'duration',
    value: (e) => e.heat.secondsToMotorLimit,
  },
  {
    name: 'steadyControllerC',
    label: 'Controller temperature of a long run',
    kind: 'temperature',
    value: (e) => e.heat.controllerTemperature,
  },
  {
    name: 'coolantRiseK',
    label: 'Coolant warming',
    kind: 'temperatureDifference',
    value: (e) => e.heat.coolantRise,
  },
] as const satisfies readonly Figure[]

/** Level travel at half of the top speed. */
export const cruiseFigures = [
  {
    name: 'cruiseHalfTopPackAmps',
    label: 'Pack current at half speed',
    kind: 'amps',
    value: (e) => e.cruise.packAmps,
  },
  {
    name: 'cruiseHalfTopMinutes',
    label: 'Run time at half speed',
    kind: 'minutes',
    value: (e) => e.cruise.seconds / 60,
  },
  {
    name: 'cruiseHalfTopKilometres',
    label: 'Range at half speed',
    kind: 'kilometres',
    value: (e) => e.cruise.metres / 1000,
  },
] as const satisfies readonly Figure[]
