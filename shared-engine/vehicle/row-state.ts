import type { Machine } from '../machine/parts.ts'
import { controllerLossAt } from '../motor/controller-loss.ts'
import { dutyForAmps, noLoadAmpsAt } from '../motor/drive-line.ts'
import type { Propulsion } from './propulsion.ts'
import { setDuty, StateAtSpeed } from './state-at-speed.ts'

/** One state of a drive pattern and what it costs: going straight, or in a pivot turn. */
export class DriveMoment extends StateAtSpeed {
  /** A with accessories, and V of the pack. */
  packAmps = NaN
  packVolts = NaN
  /** W of one motor and of one controller. */
  ironLoss = NaN
  controllerLoss = NaN
}

/** One row of a pattern, worked out as a steady state. */
export class RowState {
  seconds = 0
  /** Share of the time in a pivot turn; 0 where the machine can't. */
  turnShare = 0
  /** R(v), N at the row's speed. */
  resistance = NaN
  /** F_max, N. */
  gripThrust = NaN
  /** Whether the row asks to move. */
  moves = false
  readonly straight = new DriveMoment()
  readonly turn = new DriveMoment()
}

/** Puts a moment at rest without current: only the accessories draw. *Source:* `docs/model.md` §7. */
export function setResting(moment: DriveMoment): void {
  moment.groundSpeed = moment.beltSpeed = moment.motorSpeed = moment.slip = moment.thrust = 0
  moment.motorAmps = moment.motorTorque = 0
}

/**
 * Fills in what a moment costs, from its motors' speed and amps, at the duty that passes those.
 *
 * δ by {@link dutyForAmps}, at most the cap, amps fed back too;  pack M δ I + I_a;  V = V_oc − I_pack R_b;
 * iron ω K_t I_0(ω).
 *
 * *Source:* `docs/model.md` §§3 and 7.
 */
export function setMomentCost(moment: DriveMoment, machine: Machine, propulsion: Propulsion): void {
  const { drive } = propulsion
  const { motorAmps, motorSpeed } = moment
  const duty = motorAmps === 0 ? 0 : dutyForAmps(drive, motorAmps, motorSpeed)
  setCostAtDuty(moment, machine, propulsion, Math.min(duty, machine.controller.throttleCap))
}

/** The same as {@link setMomentCost} at a duty that is known. */
export function setCostAtDuty(
  moment: DriveMoment,
  machine: Machine,
  propulsion: Propulsion,
  duty: number,
): void {
  const { drive, openVolts, accessoryAmps } = propulsion
  moment.noLoadAmps = noLoadAmpsAt(drive, moment.motorSpeed)
  setDuty(moment, drive.count, duty)
  moment.packAmps = moment.packDriveAmps + accessoryAmps
  moment.packVolts = openVolts - moment.packAmps * drive.packResistance
  moment.ironLoss = moment.motorSpeed * drive.torqueConstant * moment.noLoadAmps
  moment.controllerLoss = controllerLossAt(machine.controller, moment.motorAmps, moment.packVolts)
}
