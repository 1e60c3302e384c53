import type { Evaluation } from '../cases/evaluation.ts'
import { caseNumber } from '../cases/case.ts'
import type { Draft } from '../workings/draft.ts'
import { restAmps } from '../workings/currents.ts'
import { noLoadAtRest, sprocketRadius, torqueConstant } from '../workings/circuit.ts'
import { gripThrust } from '../workings/footing.ts'
import { pivotMissing } from '../workings/force.ts'
import { allMeasured, limitsOfPart, type PartLimitFacts } from './part.ts'
import { addMaximum, addMinimum, type Ledger } from './ledger.ts'

const force = { question: 'hold', unit: 'N', kind: 'force' } as const

/** `F_r`: the strongest push at rest, at most the grip. */
function strongestPush(d: Draft): void {
  restAmps(d)
  torqueConstant(d, 'service')
  noLoadAtRest(d)
  d.figure('G', 'ratio')
  d.figure('eta', 'efficiency')
  sprocketRadius(d)
  d.entry('D_0', 'track.internalDragN')
  const told = ['force', 'strongest push of the motors at rest'] as const
  d.step('F_m', told, 'M * K_t * (I_r - I_0) * G * eta / r - D_0')
  d.figure('F_max', 'gripThrustN')
  const passed = ['force', 'what the ground passes on of it'] as const
  d.step('F_r', passed, 'min(F_m, F_max)')
}

const facts = {
  'vehicle.front-lift': {
    group: 'holds',
    label: 'Front coming up under thrust',
    ...force,
    sense: 'maximum',
    needs: ['vehicle.cgHeightMm', 'vehicle.cgAheadMm'],
    working: {
      title: 'The strongest push from rest against the thrust at which the front comes up.',
      source: 'moments about the rear edge of the patch',
      unformed: 'the front is up before any thrust: it counts as over.',
      write: (d) => {
        strongestPush(d)
        d.figure('F_l', 'frontLiftThrustN')
        return { actual: 'F_r', allowed: 'F_l' }
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
    ...force,
    sense: 'minimum',
    needs: ['vehicle.gaugeMm', 'vehicle.contactLengthMm', 'ground.turnFriction'],
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
} as const satisfies Readonly<Record<string, PartLimitFacts>>

export type VehicleLimitId = keyof typeof facts

/** Limits of the whole machine, in the ledger’s order. */
export const vehicleLimits = limitsOfPart('vehicle', facts)

const {
  'vehicle.front-lift': frontLift,
  'vehicle.start': start,
  'vehicle.pivot-turn': pivotTurn,
  ...unmeasured
} = vehicleLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureVehicle(ledger: Ledger, e: Evaluation): void {
  const { startThrust, footing, level } = e
  if (!Number.isNaN(e.frontLiftThrust)) {
    addMaximum(ledger, frontLift, e.frontLiftPush, e.frontLiftThrust, caseNumber.rest)
  }
  addMinimum(
    ledger,
    start,
    Math.min(startThrust, footing.gripThrust),
    footing.standingResistance,
    caseNumber.rest,
  )
  if (!Number.isNaN(e.pivotThrust)) {
    addMinimum(ledger, pivotTurn, Math.min(startThrust, level.gripThrust) / 2, e.pivotThrust, caseNumber.rest)
  }
}
