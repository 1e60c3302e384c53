import type { Machine } from '../machine/parts.ts'
import { ampsAt, dutyAt, noLoadAmpsAt } from '../motor/drive-line.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Propulsion } from './propulsion.ts'

/**
 * The machine at one speed: where ground and belt are, what they pass on, and what one motor does for it. Top speed,
 * cruise, curves and drives all are this and something of their own; NaN where a number does not exist.
 */
export class StateAtSpeed {
  /** v, m/s. */
  groundSpeed = NaN
  /** v_b, m/s. */
  beltSpeed = NaN
  /** i, 0 to 1. */
  slip = NaN
  /** N that the ground passes on. */
  thrust = NaN
  /** ω, rad/s. */
  motorSpeed = NaN
  /** T, N·m of one motor. */
  motorTorque = NaN
  /** I, A of one motor. */
  motorAmps = NaN
  /** I_0(ω), A of one motor without load at this speed. */
  noLoadAmps = NaN
  /** Duty in force: the throttle's, or less where that is enough or the current limit acts. */
  duty = NaN
  /** A of all motors together at the pack, accessories left out. */
  packDriveAmps = NaN
}

/** Clears a state that does not exist. */
export function clearState(state: StateAtSpeed): void {
  state.groundSpeed = state.beltSpeed = state.slip = state.thrust = NaN
  state.motorSpeed = state.motorTorque = state.motorAmps = state.noLoadAmps = NaN
  state.duty = state.packDriveAmps = NaN
}

/**
 * Fills in the motors' side at the throttle of a propulsion, from the state's belt speed.
 *
 * ω = v_b G/r;  I and duty of the drive line at ω;  T = K_t (I − I_0(ω));  M δ I at the pack.
 *
 * *Source:* `docs/model.md` §§3 and 5.
 */
export function setMotorsAtThrottle(state: StateAtSpeed, { drive, line }: Propulsion): void {
  const motorSpeed = state.beltSpeed * line.motorPerBelt
  state.motorSpeed = motorSpeed
  state.noLoadAmps = noLoadAmpsAt(drive, motorSpeed)
  state.motorAmps = ampsAt(drive, motorSpeed)
  state.motorTorque = drive.torqueConstant * (state.motorAmps - state.noLoadAmps)
  setDuty(state, drive.count, dutyAt(drive, motorSpeed))
}

/**
 * Fills in torque and current of the motors from the state's thrust and belt speed: this keeps every digit where both
 * are small differences of large numbers. Which duty passes that current is for {@link setDuty}.
 *
 * ω = v_b G/r;  T = (F + D) r/(M G η);  I = T/K_t + I_0(ω).
 *
 * *Source:* `docs/model.md` §5, solved for the torque.
 */
export function setMotorsForThrust(state: StateAtSpeed, machine: Machine, { drive, line }: Propulsion): void {
  const motorSpeed = state.beltSpeed * line.motorPerBelt
  state.motorSpeed = motorSpeed
  state.noLoadAmps = noLoadAmpsAt(drive, motorSpeed)
  state.motorTorque = (state.thrust + internalDragAt(machine.track, state.beltSpeed)) / line.thrustPerTorque
  state.motorAmps = state.motorTorque / drive.torqueConstant + state.noLoadAmps
}

/**
 * Notes the duty in force, and with it what all motors draw at the pack.
 *
 * I_b = M δ I.
 *
 * @param count M
 * @param duty δ, 0 to 1
 * *Source:* `docs/model.md` §3.
 */
export function setDuty(state: StateAtSpeed, count: number, duty: number): void {
  state.duty = duty
  state.packDriveAmps = count * duty * state.motorAmps
}
