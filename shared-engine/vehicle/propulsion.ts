import type { Machine } from '../machine/parts.ts'
import { DriveLine, setDriveLine } from '../motor/drive-line.ts'
import { accessoryAmpsOf } from '../pack/accessories.ts'
import { setThrustLine, ThrustLine } from './thrust-line.ts'

/** Pack, accessories, motors and track at one charge, temperature and throttle: what pushes, whatever the ground. */
export class Propulsion {
  /** V_oc, V, resting. */
  openVolts = 0
  /** I_a, A. */
  accessoryAmps = 0
  /** V_0, V: what is left for the drive. */
  driveVolts = 0
  readonly drive = new DriveLine()
  readonly line = new ThrustLine()
}

/**
 * Fills a propulsion.
 *
 * V_0 = V_oc − I_a R_b, I_a from the accessories' power at that V_oc;  drive line and thrust line at V_0.
 *
 * @param openVolts V_oc, V
 * @param winding °C of windings and magnets
 * @param throttle duty, 0 to 1
 * *Source:* `docs/model.md` §§2, 3 and 5; each part names its own.
 */
export function setPropulsion(
  propulsion: Propulsion,
  machine: Machine,
  openVolts: number,
  winding: number,
  throttle: number,
): void {
  const { pack, accessories } = machine
  propulsion.openVolts = openVolts
  propulsion.accessoryAmps = accessoryAmpsOf(accessories.power, openVolts, pack.resistance)
  propulsion.driveVolts = openVolts - propulsion.accessoryAmps * pack.resistance
  setDriveLine(propulsion.drive, machine, propulsion.driveVolts, winding, throttle)
  setThrustLine(propulsion.line, machine, propulsion.drive)
}
