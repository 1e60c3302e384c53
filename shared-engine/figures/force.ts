import { rpmOf } from '../units/rpm.ts'
import type { Figure } from './figure.ts'

/** Thrust, ground, lifting and turning. */
export const forceFigures = [
  { name: 'startThrustN', label: 'Motor thrust at rest', kind: 'force', value: (e) => e.startThrust },
  {
    name: 'gripThrustN',
    label: 'Most thrust the ground takes',
    kind: 'force',
    value: (e) => e.footing.gripThrust,
  },
  { name: 'sinkageM', label: 'Sinkage', kind: 'length', value: (e) => e.footing.sinkage },
  {
    name: 'groundResistanceN',
    label: 'Resistance at rest',
    kind: 'force',
    value: (e) => e.footing.standingResistance,
  },
  {
    name: 'airDensity',
    label: 'Air density',
    kind: 'density',
    value: (_e, machine) => machine.ground.airDensity,
  },
  {
    name: 'frontLiftThrustN',
    label: 'Thrust that lifts the front',
    kind: 'force',
    value: (e) => e.frontLiftThrust,
  },
  {
    name: 'frontLiftThrottlePercent',
    label: 'Throttle that lifts the front',
    kind: 'percent',
    value: (e) => 100 * e.frontLiftDuty,
  },
  {
    name: 'pivotThrustN',
    label: 'Push per side to turn on the spot',
    kind: 'force',
    value: (e) => e.pivotThrust,
  },
  {
    name: 'pivotMotorAmps',
    label: 'Motor current turning on the spot',
    kind: 'amps',
    value: (e) => e.pivotAmps,
  },
] as const satisfies readonly Figure[]

/** Teeth and loops. */
export const trackFigures = [
  {
    name: 'teethEngaged',
    label: 'Teeth engaged',
    kind: 'count',
    value: (_e, machine) => machine.track.engagedTeeth,
  },
  {
    name: 'toothSharePercent',
    label: 'Share of the most loaded row',
    kind: 'percent',
    value: (e) => 100 * e.toothShare,
  },
  { name: 'toothForceN', label: 'Force on the most loaded tooth', kind: 'force', value: (e) => e.toothForce },
  { name: 'toothShearPa', label: 'Tooth shear', kind: 'stress', value: (e) => e.toothShear },
  { name: 'toothBendingPa', label: 'Tooth bending', kind: 'stress', value: (e) => e.toothBending },
  { name: 'toothBearingPa', label: 'Tooth flank pressure', kind: 'stress', value: (e) => e.toothBearing },
  { name: 'loopTensionN', label: 'Loop tension', kind: 'force', value: (e) => e.loopTension },
  {
    name: 'burstBeltSpeedMps',
    label: 'Belt speed that bursts the loop',
    kind: 'speed',
    value: (e) => e.burstSpeed,
  },
  {
    name: 'burstMotorRpm',
    label: 'Motor rpm that bursts the loop',
    kind: 'rpm',
    value: (e) => rpmOf(e.burstSpeed * e.line.motorPerBelt),
  },
] as const satisfies readonly Figure[]
