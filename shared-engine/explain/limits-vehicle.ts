import { noLoadAtRest, sprocketRadius, torqueConstant } from './circuit.ts'
import type { Draft } from './draft.ts'
import { gripThrust } from './footing.ts'
import { pivotMissing } from './force.ts'
import { restAmps } from './limits-electric.ts'
import type { LimitSubject } from './margin.ts'

/** `F_r`: the strongest push at rest, at most the grip. */
function strongestPush(d: Draft): void {
  const { machine, evaluation } = d.checked
  const { drive, line } = evaluation
  restAmps(d)
  torqueConstant(d, 'service')
  noLoadAtRest(d)
  d.figure('G', 'ratio')
  d.figure('eta', 'efficiency')
  sprocketRadius(d)
  d.entry('D_0', 'track.internalDragN')
  const told = ['force', 'strongest push of the motors at rest'] as const
  const value =
    line.thrustPerTorque * drive.torqueConstant * (evaluation.restAmps - drive.noLoadBase) -
    machine.track.internalDrag
  d.step('F_m', told, 'M * K_t * (I_r - I_0) * G * eta / r - D_0', value)
  d.figure('F_max', 'gripThrustN')
  const passed = ['force', 'what the ground passes on of it'] as const
  d.step('F_r', passed, 'min(F_m, F_max)', evaluation.frontLiftPush)
}

export const vehicleLimitWorkings = {
  'vehicle.front-lift': {
    title: 'The strongest push from rest against the thrust at which the front comes up.',
    source: 'moments about the rear edge of the patch',
    unformed: 'the front is up before any thrust: it counts as over.',
    write: (d) => {
      strongestPush(d)
      d.figure('F_l', 'frontLiftThrustN')
      return { actual: 'F_r', allowed: 'F_l' }
    },
  },
  'vehicle.start': {
    title: 'The thrust at rest against what holds the machine back: whether it gets going.',
    source: 'statics of the machine on its slope',
    unformed: 'there is no thrust at rest: it counts as over.',
    write: (d, row) => {
      d.figure('F_m0', 'startThrustN')
      d.figure('F_max', 'gripThrustN')
      d.step('F_r', ['force', 'thrust at rest'], 'min(F_m0, F_max)', row.actual ?? NaN)
      d.figure('R_0', 'groundResistanceN')
      return { actual: 'F_r', allowed: 'R_0' }
    },
  },
  'vehicle.pivot-turn': {
    title: 'The push of each side against what it takes to turn on the spot.',
    source: 'Wong, Theory of Ground Vehicles, skid steering with uniform pressure',
    assumptions: ['Sideways drag takes no grip from the push.'],
    missing: pivotMissing,
    unformed: 'there is no thrust at rest: it counts as over.',
    write: (d, row) => {
      d.figure('F_m0', 'startThrustN')
      gripThrust(d, 'level')
      const told = ['force', 'push of each side'] as const
      d.step('F_r', told, 'min(F_m0, F_max) / 2', row.actual ?? NaN, 'the grip is that on the level')
      d.figure('F_p', 'pivotThrustN')
      return { actual: 'F_r', allowed: 'F_p' }
    },
  },
} as const satisfies Record<string, LimitSubject>
