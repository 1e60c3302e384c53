import { resistanceAt } from '../ground/resistance.ts'
import { ampsAt, dutyAt, noLoadAmpsAt, torqueAt } from '../motor/drive-line.ts'
import type { CurveSetting } from './curve-setting.ts'
import { slipForThrust } from './cruise.ts'
import { motorThrustAt } from './thrust-line.ts'

/** Everything at one belt speed and throttle, for a plot, the power path and the energy book; SI. */
export interface DriveState {
  /** Duty in force: the throttle's, or less where the current limit acts. */
  readonly duty: number
  /** rad/s. */
  readonly motorSpeed: number
  /** A of one motor. */
  readonly motorAmps: number
  /** A of one motor without load at this speed. */
  readonly noLoadAmps: number
  /** N·m of one motor. */
  readonly motorTorque: number
  /** A with accessories. */
  readonly packAmps: number
  readonly packVolts: number
  /** F_m, N: what the motors push. */
  readonly motorThrust: number
  /** N: what the ground lets through. */
  readonly thrust: number
  /** F_max, N. */
  readonly gripThrust: number
  /** R(v), N. */
  readonly resistance: number
  readonly beltSpeed: number
  readonly groundSpeed: number
  /** 0 to 1. */
  readonly slip: number
  /** W of all motors together; losses too. */
  readonly shaftPower: number
  readonly packPower: number
  readonly copperLoss: number
  readonly ironLoss: number
  readonly controllerLoss: number
  /** W in pack and wiring. */
  readonly packLoss: number
  /** Shaft power over shaft power, copper and iron; null where nothing is drawn. */
  readonly motorEfficiency: number | null
  /** Thrust × ground speed over V_oc × pack amps; null where nothing is drawn. */
  readonly overallEfficiency: number | null
}

/**
 * State at a belt speed.
 *
 * On `coefficient` ground the track spins at its given slip up to F_max and freely beyond, where ground speed is what
 * F_max leaves; on `soil` slip follows from the thrust.
 *
 * @param beltSpeed v_b, m/s
 * *Source:* `docs/model.md` §§3 and 5. A spinning track's ground speed is that at which the machine neither gains nor loses
 * grip: on a plot over belt speed it is told as v_b (1 − slip given).
 */
export function driveStateAt(setting: CurveSetting, beltSpeed: number): DriveState {
  const { machine, drive, line, footing } = setting
  const motorThrust = motorThrustAt(line, beltSpeed)
  const thrust = Math.min(motorThrust, footing.gripThrust)
  const slip = Math.min(1, slipForThrust(machine, footing, Math.max(0, thrust)))
  return stateOf(setting, beltSpeed, beltSpeed * (1 - slip), motorThrust, thrust, slip, drive.count)
}

/** Puts a state together from where the machine is and what it pushes. */
export function stateOf(
  setting: CurveSetting,
  beltSpeed: number,
  groundSpeed: number,
  motorThrust: number,
  thrust: number,
  slip: number,
  count: number,
): DriveState {
  const { machine, drive, line, footing, airDragFactor, accessoryAmps } = setting
  const motorSpeed = beltSpeed * line.motorPerBelt
  const motorAmps = ampsAt(drive, motorSpeed)
  const noLoadAmps = noLoadAmpsAt(drive, motorSpeed)
  const motorTorque = torqueAt(drive, motorSpeed)
  const duty = dutyAt(drive, motorSpeed)
  const driveAmps = count * duty * motorAmps
  const packAmps = driveAmps + accessoryAmps
  const copperLoss = count * motorAmps * motorAmps * drive.motorResistance
  const ironLoss = count * motorSpeed * drive.torqueConstant * noLoadAmps
  const shaftPower = count * motorTorque * motorSpeed
  const packPower = machine.pack.openVolts * packAmps
  const drawn = Math.abs(driveAmps) > 0 && shaftPower > 0
  return {
    duty,
    motorSpeed,
    motorAmps,
    noLoadAmps,
    motorTorque,
    packAmps,
    packVolts: machine.pack.openVolts - packAmps * machine.pack.resistance,
    motorThrust,
    thrust,
    gripThrust: footing.gripThrust,
    resistance: resistanceAt(footing, airDragFactor, groundSpeed),
    beltSpeed,
    groundSpeed,
    slip,
    shaftPower,
    packPower,
    copperLoss,
    ironLoss,
    controllerLoss: count * motorAmps * motorAmps * machine.controller.resistance,
    packLoss: packAmps * packAmps * machine.pack.resistance,
    motorEfficiency: drawn ? shaftPower / (shaftPower + copperLoss + ironLoss) : null,
    overallEfficiency: drawn && packPower > 0 ? (thrust * groundSpeed) / packPower : null,
  }
}
