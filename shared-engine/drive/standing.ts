import { ampsAt } from '../motor/drive-line.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { beltSpeedForThrust, motorThrustAt } from '../vehicle/thrust-line.ts'
import { setDrawAtThrottle } from './driving.ts'
import { heldDutyFor, setDraw } from './electrics.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Moment } from './moment.ts'

/**
 * The machine at rest to the end of its row.
 *
 * A throttle that does not move it: spinning in place at F_m = F_max, or stalled. A speed that it cannot reach: stuck, with
 * the current of min(F_m(0), F_max), at most full throttle's. Else none flows, and nothing rolls back [assumption].
 *
 * *Source:* `docs/model.md` §7, steady rows.
 */
export function setStanding(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
): void {
  const { gripThrust } = row.ground.footing
  moment.acceleration = moment.beltAcceleration = moment.thrust = moment.force = moment.brakeForce = 0
  moment.beltSpeed = 0
  moment.spinning = false
  if ('brake' in row.ask || ('speed' in row.ask && row.ask.speed === 0)) {
    setDraw(moment.straight, moment, propulsion, 0, 0, 0)
    return
  }
  const push = motorThrustAt(propulsion.line, 0)
  moment.force = Math.max(0, Math.min(push, gripThrust))
  moment.thrust = moment.force
  if ('throttle' in row.ask) {
    moment.spinning = push > gripThrust
    if (moment.spinning) moment.beltSpeed = beltSpeedForThrust(propulsion.line, gripThrust)
    setDrawAtThrottle(moment, propulsion)
  } else setStuck(moment, model, propulsion, Math.min(push, gripThrust))
}

/** I = (F + D) r/(G η M K_t) + I_0 at rest, at most full throttle's. */
function setStuck(moment: Moment, { machine }: DriveModel, propulsion: Propulsion, force: number): void {
  const { drive, line } = propulsion
  const torque = (force + machine.track.internalDrag) / line.thrustPerTorque
  const wanted = torque / drive.torqueConstant + drive.noLoadBase
  const amps = Math.max(0, Math.min(wanted, ampsAt(drive, 0)))
  const duty = heldDutyFor(propulsion, amps, 0, machine.controller.throttleCap)
  setDraw(moment.straight, moment, propulsion, 0, amps, duty)
}
