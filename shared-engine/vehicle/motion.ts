import type { Machine } from '../machine/parts.ts'
import { Footing, setFooting, setLevelFooting } from '../ground/footing.ts'
import { StoodOn } from '../ground/stood-on.ts'
import { airDragFactorOf } from '../ground/resistance.ts'
import { equivalentMassOf } from './inertia.ts'
import { Propulsion, setPropulsion } from './propulsion.ts'

/** What pushes a machine and what holds it back, at one throttle: all that decides how it moves. */
export class Motion extends Propulsion {
  /** On the build's slope, and on the level. */
  readonly footing = new Footing()
  readonly level = new Footing()
  /** What both are of. */
  readonly stoodOn = new StoodOn()
  /** ½ ρ C_d A, N/(m/s)². */
  airDragFactor = 0
  /** m_e, kg. */
  equivalentMass = 0
}

/**
 * Fills the running state: given charge, accessories on, service temperatures.
 *
 * Top speed, the run there, cruise, curves and every limit `in the running state` start from it.
 *
 * @param throttle duty, 0 to 1; the driver's cap where left out
 * *Source:* `docs/model.md` §§2 to 5.
 */
export function setRunning(
  motion: Motion,
  machine: Machine,
  throttle = machine.controller.throttleCap,
): void {
  const { pack, service, ground } = machine
  setPropulsion(motion, machine, pack.openVolts, service.windingTemperature, throttle)
  if (motion.stoodOn.isNew(machine)) {
    setFooting(motion.footing, machine, ground.sinSlope, ground.cosSlope)
    setLevelFooting(motion.level, machine)
  }
  motion.airDragFactor = airDragFactorOf(machine)
  motion.equivalentMass = equivalentMassOf(machine)
}
