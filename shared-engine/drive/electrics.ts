import { dutyForAmps, noLoadAmpsAt, setDriveLine } from '../motor/drive-line.ts'
import { accessoryAmpsOf } from '../pack/accessories.ts'
import { cellResistanceFactor } from '../reference/chemistry.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { setThrustLine } from '../vehicle/thrust-line.ts'
import { place } from './drive.ts'
import { openVoltsAt, type DriveModel } from './model.ts'
import type { Draw, Moment } from './moment.ts'

/**
 * Pack, accessories and motors at the state of an instant.
 *
 * V_oc at the charge;  R_b = S r(T_p)/P + R_wiring;  I_a from the accessories' power at that V_oc;  K_t and R_m at the
 * winding's temperature.
 *
 * *Source:* `docs/model.md` §§2 and 3.
 */
export function setElectrics(
  moment: Moment,
  propulsion: Propulsion,
  model: DriveModel,
  state: Float64Array,
  throttle: number,
): void {
  const { machine, held } = model
  const { pack, service } = machine
  const drawn = held.charge === true ? 0 : (state[place.chargeDrawn] as number)
  const packTemperature =
    held.packTemperature === true ? service.packTemperature : (state[place.packTemperature] as number)
  const winding = held.electrics === true ? service.windingTemperature : (state[place.winding] as number)
  moment.charge = pack.stateOfCharge - drawn / pack.capacity
  moment.openVolts = openVoltsAt(machine, moment.charge)
  moment.cellsResistance = model.coolCells * cellResistanceFactor(packTemperature)
  moment.packResistance = moment.cellsResistance + pack.wiringResistance
  const asked = accessoryAmpsOf(machine.accessories.power, moment.openVolts, moment.packResistance)
  // An emptying or cold pack may come to where it cannot feed them: the most power that it has is at half its volts.
  moment.starving = Number.isNaN(asked)
  moment.accessoryAmps = Number.isNaN(asked) ? moment.openVolts / (2 * moment.packResistance) : asked
  propulsion.openVolts = moment.openVolts
  propulsion.accessoryAmps = moment.accessoryAmps
  propulsion.driveVolts = moment.openVolts - moment.accessoryAmps * moment.packResistance
  setDriveLine(propulsion.drive, machine, propulsion.driveVolts, winding, throttle, moment.packResistance)
  setThrustLine(propulsion.line, machine, propulsion.drive)
}

/** Fills what pack and one motor do for a current at a speed, at a duty. */
export function setDraw(
  draw: Draw,
  moment: Moment,
  propulsion: Propulsion,
  motorSpeed: number,
  amps: number,
  duty: number,
): void {
  draw.motorSpeed = motorSpeed
  draw.amps = amps
  draw.noLoadAmps = noLoadAmpsAt(propulsion.drive, motorSpeed)
  draw.duty = duty
  draw.packDriveAmps = propulsion.drive.count * duty * amps
  draw.packAmps = draw.packDriveAmps + moment.accessoryAmps
  draw.packVolts = moment.openVolts - draw.packAmps * moment.packResistance
}

/**
 * Duty that passes a current, at most the driver's cap; 0 for none.
 *
 * @param cap 0 to 1
 * *Source:* `docs/model.md` §3, the smaller root; also where the current charges.
 */
export function heldDutyFor(propulsion: Propulsion, amps: number, motorSpeed: number, cap: number): number {
  if (amps === 0) return 0
  const duty = dutyForAmps(propulsion.drive, amps, motorSpeed)
  return duty <= cap ? duty : cap
}
