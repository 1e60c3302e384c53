import type { Machine } from '../build/machine-parts.ts'
import { Footing, setFooting } from '../ground/footing.ts'
import { airDragFactorOf } from '../ground/resistance.ts'
import { DriveLine, setDriveLine } from '../motor/drive-line.ts'
import { accessoryAmpsOf } from '../pack/accessories.ts'
import { equivalentMassOf } from './inertia.ts'
import { setThrustLine, ThrustLine } from './thrust-line.ts'
import { setTopState } from './equilibrium.ts'
import { TopState } from './top-state.ts'

/** A machine at one throttle, ready to be asked at any speed: what every curve starts from. */
export interface CurveSetting {
  readonly machine: Machine
  readonly drive: DriveLine
  readonly line: ThrustLine
  /** On the build's slope, and on the level. */
  readonly footing: Footing
  readonly level: Footing
  readonly top: TopState
  /** ½ ρ C_d A, N/(m/s)². */
  readonly airDragFactor: number
  /** m_e, kg. */
  readonly mass: number
  /** I_a, A. */
  readonly accessoryAmps: number
}

/**
 * Prepares a machine's curves in the running state: given charge, accessories on, service temperatures.
 *
 * @param throttle duty, 0 to 1; the driver's cap where left out
 * *Source:* engine contract §§2 to 5.
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
  const airDragFactor = airDragFactorOf(machine)
  setTopState(top, machine, footing, airDragFactor, drive, line)
  return {
    machine,
    drive,
    line,
    footing,
    level,
    top,
    airDragFactor,
    mass: equivalentMassOf(machine),
    accessoryAmps,
  }
}
