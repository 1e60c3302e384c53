import { rpmOf } from '../units/rpm.ts'
import type { Figure } from './figure.ts'

/** Top speed, what it draws, and the run there. */
export const speedFigures = [
  { name: 'topSpeedMps', label: 'Top speed', kind: 'speed', value: (e) => e.top.groundSpeed },
  { name: 'topBeltSpeedMps', label: 'Belt speed at top speed', kind: 'speed', value: (e) => e.top.beltSpeed },
  {
    name: 'topMotorRpm',
    label: 'Motor rpm at top speed',
    kind: 'rpm',
    value: (e) => rpmOf(e.top.motorSpeed),
  },
  { name: 'topMotorAmps', label: 'Motor current at top speed', kind: 'amps', value: (e) => e.top.amps },
  { name: 'topPackAmps', label: 'Pack current at top speed', kind: 'amps', value: (e) => e.topPackAmps },
  { name: 'topPackVolts', label: 'Pack volts at top speed', kind: 'volts', value: (e) => e.topPackVolts },
  {
    name: 'topMotorEfficiency',
    label: 'Motor efficiency at top speed',
    kind: 'fraction',
    value: (e) => e.topMotorEfficiency,
  },
  {
    name: 'topOverallEfficiency',
    label: 'Pack to ground at top speed',
    kind: 'fraction',
    value: (e) => e.topOverallEfficiency,
  },
  { name: 'topSlip', label: 'Slip at top speed', kind: 'fraction', value: (e) => e.top.slip },
  {
    name: 'peakAccelerationMps2',
    label: 'Acceleration from rest',
    kind: 'acceleration',
    value: (e) => e.peakAcceleration,
  },
  { name: 'equivalentMassKg', label: 'Mass to accelerate', kind: 'mass', value: (e) => e.equivalentMass },
  {
    name: 'secondsToHalfTop',
    label: 'Time to half of top speed',
    kind: 'time',
    value: (e) => e.run.secondsToHalf,
  },
  {
    name: 'secondsTo80Top',
    label: 'Time to 80 % of top speed',
    kind: 'time',
    value: (e) => e.run.secondsTo80,
  },
  {
    name: 'metresTo80Top',
    label: 'Distance to 80 % of top speed',
    kind: 'distance',
    value: (e) => e.run.metresTo80,
  },
] as const satisfies readonly Figure[]
