import type { Evaluated } from '../figures/evaluated.ts'
import { driveTrain, motorModel, noLoadAtRest, sprocketRadius, torqueConstant } from './circuit.ts'
import { liftedResistance } from './balance.ts'
import { centreOfMass, groundResistance, trackWeight } from './footing.ts'
import { dutyForCurrent, pieceAt, startThrust } from './motion.ts'
import { firstOf, inCase, needing, type Missing, type Subject } from './subject.ts'

const startThrustN: Subject = {
  title: 'What the motors push with at rest and full throttle, before the ground has its say.',
  state: inCase('rest'),
  source: motorModel,
  write: (d) => startThrust(d, pieceAt(d, 0)),
}

const frontLiftThrustN: Subject = {
  title: 'The thrust at which the front comes off the ground.',
  state: inCase('rest'),
  source: 'moments about the rear edge of the patch',
  assumptions: ['The inertia of rotors and loops is left out, the safe side.'],
  missing: needing('vehicle.cgHeightMm', 'vehicle.cgAheadMm'),
  write: (d) => {
    liftedResistance(d)
    centreOfMass(d)
    d.entry('F_tow', 'vehicle.towForceN')
    d.entry('h_t', 'vehicle.towHeightMm')
    const told = ['force', 'thrust that lifts the front'] as const
    d.step('F_l', told, 'max(0, (W * x - F_tow * h_t) / h + F_tow + R_up)')
  },
}

/** Why no throttle lifts the front. */
function frontStaysDown({ evaluation, machine }: Evaluated): Missing | null {
  const { lifted, frontLiftThrust, frontLiftDuty, drive } = evaluation
  if (!Number.isNaN(frontLiftDuty)) return null
  if (!(lifted.gripThrust >= frontLiftThrust))
    return { why: 'the ground does not pass on enough thrust to lift the front: the tracks spin first.' }
  const limited = machine.controller.currentLimit !== Infinity
  const held = limited
    ? `the current limit of ${drive.currentLimit} A or the throttle’s cap`
    : 'the throttle’s cap'
  return { why: `no throttle reaches that thrust: ${held} holds the motors below it.` }
}

const frontLiftThrottlePercent: Subject = {
  title: 'The least throttle from rest at which the front comes up.',
  state: inCase('rest'),
  source: motorModel,
  missing: firstOf(needing('vehicle.cgHeightMm', 'vehicle.cgAheadMm'), frontStaysDown),
  write: (d) => {
    d.figure('F_l', 'frontLiftThrustN')
    d.entry('D_0', 'track.internalDragN')
    driveTrain(d)
    d.step('T', ['torque', 'torque of one motor'], '(F_l + D_0) * r / (M * G * eta)')
    torqueConstant(d, 'service')
    noLoadAtRest(d)
    d.step('I', ['amps', 'current of one motor'], 'T / K_t + I_0')
    dutyForCurrent(d, null)
    d.step('delta_p', ['percent', 'throttle'], '100 * delta_i')
  },
}

const pivotNeeds = needing('vehicle.gaugeMm', 'vehicle.contactLengthMm', 'ground.turnFriction')

/** Turning on the spot takes a side that pushes ahead and one that pushes astern. */
function unevenSides({ machine }: Evaluated): Missing | null {
  if (machine.motor.count % 2 === 0 && machine.track.count % 2 === 0) return null
  return { why: 'it needs motors and loops in even number: one side pushes ahead, the other astern.' }
}

export const pivotMissing = firstOf(unevenSides, pivotNeeds)
const onTheSpot = 'turning on the spot on the level, one side pushing ahead, the other astern'

const pivotThrustN: Subject = {
  title: 'What each side has to push with to turn the machine on the spot.',
  state: onTheSpot,
  source: 'Wong, Theory of Ground Vehicles, skid steering with uniform pressure',
  assumptions: [
    'Sideways drag takes no grip from the push, and skis count in the ground’s resistance alone.',
  ],
  missing: pivotMissing,
  write: (d) => {
    trackWeight(d, 'level')
    d.entry('mu_t', 'ground.turnFriction')
    d.entry('L', 'vehicle.contactLengthMm')
    d.entry('B_g', 'vehicle.gaugeMm')
    groundResistance(d, 'level')
    d.step('F_p', ['force', 'push of each side'], 'mu_t * W_t * L / (4 * B_g) + R_g / 2')
  },
}

const pivotMotorAmps: Subject = {
  title: 'The current of one motor while the machine turns on the spot.',
  state: onTheSpot,
  source: motorModel,
  missing: pivotMissing,
  write: (d) => {
    d.figure('F_p', 'pivotThrustN')
    d.entry('D_0', 'track.internalDragN')
    d.entry('M', 'motor.count')
    d.figure('G', 'ratio')
    d.figure('eta', 'efficiency')
    sprocketRadius(d)
    const expression = '(F_p + D_0 / 2) * r / (G * eta) * 2 / M'
    d.step('T', ['torque', 'torque of one motor'], expression)
    torqueConstant(d, 'service')
    noLoadAtRest(d)
    d.step('I', ['amps', 'current of one motor'], 'T / K_t + I_0')
  },
}

export const forceWorkings = {
  startThrustN,
  frontLiftThrustN,
  frontLiftThrottlePercent,
  pivotThrustN,
  pivotMotorAmps,
} satisfies Record<string, Subject>
