import type { Machine } from '../machine/parts.ts'
import { Footing, setFooting } from '../ground/footing.ts'
import { airDragFactorOf } from '../ground/resistance.ts'
import { DriveLine, setDriveLine } from '../motor/drive-line.ts'
import { accessoryAmpsOf } from '../pack/accessories.ts'
import { equivalentMassOf } from './inertia.ts'
import type { Motion } from './motion.ts'
import { setThrustLine, ThrustLine } from './thrust-line.ts'
import { setTopState } from './equilibrium.ts'
import { TopState } from './top-state.ts'

/** A machine at one throttle, ready to be asked at any speed: what every curve starts from. */
export interface CurveSetting extends Motion {
  readonly machine: Machine
  readonly top: TopState
}

/**
 * Prepares a machine's curves in the running state: given charge, accessories on, service temperatures.
 *
 * @param throttle duty, 0 to 1; the driver's cap where left out
 * *Source:* `docs/model.md` §§2 to 5.
 */
export function curveSettingOf(machine: Machine, throttle = machine.controller.throttleCap): CurveSetting {
  const { pack, accessories, ground, service } = machine
  const accessoryAmps = accessoryAmpsOf(accessories.power, pack.openVolts, pack.resistance)
  const drive = new DriveLine()
  const line = new ThrustLine()
  const footing = new Footing()
  const level = new Footing()
  const top = new TopState()
  const volts = pack.openVolts - accessoryAmps * pack.resistance
  setDriveLine(drive, machine, volts, service.windingTemperature, throttle)
  setThrustLine(line, machine, drive)
  setFooting(footing, machine, ground.sinSlope, ground.cosSlope)
  setFooting(level, machine, 0, 1)
  const motion = {
    drive,
    line,
    footing,
    level,
    airDragFactor: airDragFactorOf(machine),
    equivalentMass: equivalentMassOf(machine),
    accessoryAmps,
  }
  setTopState(top, machine, motion)
  return { ...motion, machine, top }
}
