import { Propulsion } from '../vehicle/propulsion.ts'
import { place } from './drive.ts'
import { resistanceOf, setSpinning, setThrottle } from './driving.ts'
import { setElectrics } from './electrics.ts'
import { setBraking, setHolding } from './holding.ts'
import { leastSpeedOf, type DriveModel, type SettledRow } from './model.ts'
import { Moment } from './moment.ts'
import { setStanding } from './standing.ts'
import { setTurning } from './turning.ts'

/** How the machine moves between two kinks: at rest, with the ground, or on a track that spins. */
export type Phase = 'standing' | 'moving' | 'spinning'

/** Memory that one drive works in. */
export class Workplace {
  readonly moment = new Moment()
  readonly propulsion = new Propulsion()
}

/** Fills the moment of a state in a phase of a row. */
export function setMoment(
  { moment, propulsion }: Workplace,
  model: DriveModel,
  row: SettledRow,
  phase: Phase,
  state: Float64Array,
): void {
  const { ask } = row
  const throttle = 'throttle' in ask ? ask.throttle : model.machine.controller.throttleCap
  setElectrics(moment, propulsion, model, state, throttle)
  moment.speed = phase === 'standing' ? 0 : Math.max(0, state[place.speed] as number)
  moment.resistance = resistanceOf(model, row, moment.speed)
  if (phase === 'standing') setStanding(moment, model, row, propulsion)
  else if ('brake' in ask) setBraking(moment, model, row, propulsion, ask.brake)
  else if ('speed' in ask) setHolding(moment, model, row, propulsion, ask.speed)
  else if (phase === 'spinning') setSpinning(moment, model, row, propulsion, state[place.belt] as number)
  else setThrottle(moment, model, row, propulsion)
  if (row.turnShare > 0) turn(moment, model, row, propulsion, throttle, state)
}

function turn(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  throttle: number,
  state: Float64Array,
): void {
  const { throttleCap } = model.machine.controller
  if (throttle !== throttleCap) setElectrics(moment, propulsion, model, state, throttleCap)
  setTurning(moment, model, row, propulsion)
  if (throttle !== throttleCap) setElectrics(moment, propulsion, model, state, throttle)
}

/**
 * The phase that a row begins with, from the phase before it.
 *
 * At rest, a speed of 0 and brakes hold; others set off where the machine would speed up, else stand to the row's end. A
 * spinning belt goes on spinning under a throttle and is caught by every other row.
 */
export function firstPhase(
  workplace: Workplace,
  model: DriveModel,
  row: SettledRow,
  before: Phase,
  state: Float64Array,
): Phase {
  const { ask, ground } = row
  const { moment } = workplace
  const atRest = !((state[place.speed] as number) > leastSpeedOf(row))
  if (atRest && ('brake' in ask || ('speed' in ask && ask.speed === 0))) return 'standing'
  setMoment(workplace, model, row, 'moving', state)
  if ('throttle' in ask && model.machine.ground.model === 'coefficient') {
    const carried = before === 'spinning' && (state[place.belt] as number) > moment.speed / (1 - model.slip)
    const slips = moment.thrust > ground.footing.gripThrust
    if (atRest && !(moment.acceleration > 0)) return 'standing'
    if (carried) return 'spinning'
    if (slips) {
      state[place.belt] = moment.speed / (1 - model.slip)
      return 'spinning'
    }
  }
  return atRest && !(moment.acceleration > 0) ? 'standing' : 'moving'
}
