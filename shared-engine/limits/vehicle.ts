import type { Evaluation } from '../cases/evaluation.ts'
import { caseNumber } from '../cases/case.ts'
import { outsideSoilTheory } from '../ground/soil-theory.ts'
import type { Machine } from '../machine/parts.ts'
import { degreesOf } from '../units/factors.ts'
import { liftedGrip, loopsGrip, spinUpLift } from '../workings/balance.ts'
import { centreOfMass, gripThrust, soilBooks } from '../workings/footing.ts'
import { pivotMissing } from '../workings/force.ts'
import { strongestPush } from '../workings/push.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { absentOf } from './limit.ts'
import { addMaximum, addMinimum, doubtFrom, type Ledger } from './ledger.ts'

const force = { question: 'hold', unit: 'N', kind: 'force' } as const

const turn = { question: 'hold', unit: 'deg', kind: 'degrees' } as const
const pivotEntries = ['vehicle.gaugeMm', 'vehicle.contactLengthMm', 'ground.turnFriction'] as const
const centre = ['vehicle.cgHeightMm', 'vehicle.cgAheadMm'] as const

const facts = {
  'vehicle.front-lift': {
    group: 'holds',
    label: 'Front coming up under thrust',
    ...force,
    sense: 'maximum',
    needs: centre,
    working: {
      title: 'The strongest push from rest against the thrust at which the front comes up.',
      source: 'moments about the rear edge of the patch',
      unformed: 'the front is up before any thrust: it counts as over.',
      write: (d) => {
        liftedGrip(d)
        strongestPush(d)
        d.step('F_r', ['force', 'what the ground passes on of it'], 'min(F_m, F_g)')
        d.figure('F_l', 'frontLiftThrustN')
        return { actual: 'F_r', allowed: 'F_l' }
      },
    },
  },
  'vehicle.spin-up-lift': {
    group: 'holds',
    label: 'Front coming up while the loop spins up',
    lacking: (build, { strongestPush: push, lifted }) =>
      push > lifted.gripThrust ? absentOf(build, centre) : null,
    question: 'hold',
    unit: 'N m',
    kind: 'torque',
    sense: 'maximum',
    needs: centre,
    working: {
      title: 'The nose-up moment while the loops spin up on the spot against that of the weight.',
      source: 'moments about the rear edge of the patch; angular momentum of a closed loop',
      assumptions: ['It is no flip yet: how long the moment lasts stands beside (spinUpLiftSeconds).'],
      missing: loopsGrip,
      write: (d) => {
        spinUpLift(d)
        centreOfMass(d, ['ahead'])
        d.step('M_w', ['torque', 'moment of the weight'], 'W * x')
        return { actual: 'M_u', allowed: 'M_w' }
      },
    },
  },
  'vehicle.tip-back': {
    group: 'holds',
    label: 'Falling over backwards on the slope',
    ...turn,
    sense: 'maximum',
    needs: centre,
    working: {
      title: 'The slope against the one on which the standing machine falls over backwards.',
      source: 'statics',
      write: (d) => {
        d.entry('j', 'ground.gradePercent')
        d.step('theta', ['degrees', 'angle of the slope'], 'atan(j) * 180 / pi')
        d.figure('beta', 'tipBackDegrees')
        return { actual: 'theta', allowed: 'beta' }
      },
    },
  },
  'vehicle.tip-side': {
    group: 'holds',
    label: 'Falling over sideways',
    lacking: (build) => (build.track.count > 1 ? absentOf(build, ['vehicle.gaugeMm', ...centre]) : null),
    ...turn,
    sense: 'maximum',
    needs: ['vehicle.gaugeMm', ...centre],
    working: {
      title: 'The side slope against the one on which the standing machine falls over.',
      source: 'statics',
      write: (d) => {
        d.entry('j', 'ground.sideSlopePercent')
        d.step('theta', ['degrees', 'angle of the side slope'], 'atan(j) * 180 / pi')
        d.figure('gamma', 'tipSideDegrees')
        return { actual: 'theta', allowed: 'gamma' }
      },
    },
  },
  'vehicle.start': {
    group: 'holds',
    label: 'Starting from rest',
    ...force,
    sense: 'minimum',
    needs: [],
    working: {
      title: 'The thrust at rest against what holds the machine back: whether it gets going.',
      source: 'statics of the machine on its slope',
      unformed: 'there is no thrust at rest: it counts as over.',
      write: (d) => {
        d.figure('F_m0', 'startThrustN')
        d.figure('F_max', 'gripThrustN')
        d.step('F_r', ['force', 'thrust at rest'], 'min(F_m0, F_max)')
        d.figure('R_0', 'groundResistanceN')
        return { actual: 'F_r', allowed: 'R_0' }
      },
    },
  },
  'vehicle.pivot-turn': {
    group: 'holds',
    label: 'Turning on the spot',
    lacking: (build) =>
      build.motor.count % 2 === 0 && build.track.count % 2 === 0 ? absentOf(build, pivotEntries) : null,
    ...force,
    sense: 'minimum',
    needs: pivotEntries,
    working: {
      title: 'The push of each side against what it takes to turn on the spot.',
      source: 'Wong, Theory of Ground Vehicles, skid steering with uniform pressure',
      assumptions: ['Sideways drag takes no grip from the push.'],
      missing: pivotMissing,
      unformed: 'there is no thrust at rest: it counts as over.',
      write: (d) => {
        d.figure('F_m0', 'startThrustN')
        gripThrust(d, 'level')
        const told = ['force', 'push of each side'] as const
        d.step('F_r', told, 'min(F_m0, F_max) / 2', 'the grip is that on the level')
        d.figure('F_p', 'pivotThrustN')
        return { actual: 'F_r', allowed: 'F_p' }
      },
    },
  },
  'vehicle.clearance': {
    group: 'holds',
    label: 'Belly on the ground',
    question: 'hold',
    unit: 'm',
    kind: 'length',
    sense: 'maximum',
    needs: ['ground.soil', 'vehicle.clearanceMm'],
    working: {
      title: 'How deep the tracks sink against the clearance of the belly.',
      source: soilBooks,
      write: (d) => {
        d.figure('z_s', 'sinkageM')
        d.entry('h_b', 'vehicle.clearanceMm')
        return { actual: 'z_s', allowed: 'h_b' }
      },
    },
  },
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type VehicleLimitId = keyof typeof facts

/** Limits of the whole machine, in the ledger’s order. */
export const vehicleLimits = limitsOfPart('vehicle', facts)

const {
  'vehicle.front-lift': frontLift,
  'vehicle.spin-up-lift': spinUpLifts,
  'vehicle.tip-back': tipBack,
  'vehicle.tip-side': tipSide,
  'vehicle.start': start,
  'vehicle.pivot-turn': pivotTurn,
  'vehicle.clearance': clearance,
  ...unmeasured
} = vehicleLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureVehicle(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const first = ledger.count
  measureBalance(ledger, e)
  measurePush(ledger, e)
  const { clearance: free } = machine.vehicle
  const { rest } = caseNumber
  if (machine.ground.model === 'soil' && free !== null)
    addMaximum(ledger, clearance, e.footing.sinkage, free, rest)
  if (outsideSoilTheory(machine, e.footing)) doubtFrom(ledger, first)
  measureTipping(ledger, e)
}

/** What lifts the front. */
function measureBalance(ledger: Ledger, e: Evaluation): void {
  if (Number.isNaN(e.frontLiftThrust)) return
  addMaximum(ledger, frontLift, e.frontLiftPush, e.frontLiftThrust, caseNumber.rest)
  if (Number.isNaN(e.spinUpLift.moment)) return
  addMaximum(ledger, spinUpLifts, e.spinUpLift.moment, e.rightingMoment, caseNumber.rest)
}

/** Whether it gets going, and turns. */
function measurePush(ledger: Ledger, e: Evaluation): void {
  const { startThrust, footing, level } = e
  const push = Math.min(startThrust, footing.gripThrust)
  addMinimum(ledger, start, push, footing.standingResistance, caseNumber.rest)
  if (Number.isNaN(e.pivotThrust)) return
  const side = Math.min(startThrust, level.gripThrust) / 2
  addMinimum(ledger, pivotTurn, side, e.pivotThrust, caseNumber.rest)
}

/** Where it falls over. */
function measureTipping(ledger: Ledger, e: Evaluation): void {
  const { build } = caseNumber
  if (!Number.isNaN(e.tipBack)) addMaximum(ledger, tipBack, degreesOf(e.slope), degreesOf(e.tipBack), build)
  if (!Number.isNaN(e.tipSide))
    addMaximum(ledger, tipSide, degreesOf(e.sideSlope), degreesOf(e.tipSide), build)
}
