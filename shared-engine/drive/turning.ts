import { noLoadAmpsAt } from '../motor/drive-line.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { forwardAmps } from './driving.ts'
import { heldDutyFor, setDraw } from './electrics.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Moment } from './moment.ts'

/**
 * What a turn on the spot draws, the belts at half of the ground speed [assumption].
 *
 * T = (F_p + D/2) r/(G η) · 2/M;  I = T/K_t + I_0(ω), not below 0, at most full throttle's.
 *
 * @param propulsion at full throttle
 * *Source:* Wong, Theory of Ground Vehicles, skid steering; `docs/model.md` §§5 and 7.
 */
export function setTurning(
  moment: Moment,
  { machine }: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
): void {
  const { drive, line } = propulsion
  const beltSpeed = moment.speed / 2
  const motorSpeed = beltSpeed * line.motorPerBelt
  const push = row.ground.pivotThrust + internalDragAt(machine.track, beltSpeed) / 2
  const wanted = (2 * push) / line.thrustPerTorque / drive.torqueConstant + noLoadAmpsAt(drive, motorSpeed)
  const amps = Math.min(Math.max(0, wanted), forwardAmps(propulsion, motorSpeed))
  const duty = heldDutyFor(propulsion, amps, motorSpeed, machine.controller.throttleCap)
  setDraw(moment.turn, moment, propulsion, motorSpeed, amps, duty)
}
