import { resistanceAt } from '../ground/resistance.ts'
import type { CurveSetting } from './curve-setting.ts'
import { slipForThrust } from './cruise.ts'
import { setMotorsAtThrottle, StateAtSpeed } from './state-at-speed.ts'
import { motorThrustAt } from './thrust-line.ts'

/** A state at one throttle, with where the power goes, for a plot, the power path and the energy book; SI. */
export interface DriveState extends Readonly<StateAtSpeed> {
  /** A with accessories. */
  readonly packAmps: number
  readonly packVolts: number
  /** F_m, N: what the motors push. */
  readonly motorThrust: number
  /** F_max, N. */
  readonly gripThrust: number
  /** R(v), N. */
  readonly resistance: number
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
  const { machine, line, footing } = setting
  const thrust = Math.min(motorThrustAt(line, beltSpeed), footing.gripThrust)
  const slip = Math.min(1, slipForThrust(machine, footing, Math.max(0, thrust)))
  return stateOf(setting, beltSpeed, beltSpeed * (1 - slip), slip)
}

/** Puts a state together from where the machine is and what its motors push. */
export function stateOf(
  setting: CurveSetting,
  beltSpeed: number,
  groundSpeed: number,
  slip: number,
): DriveState {
  const { machine, drive, line, footing, airDragFactor, accessoryAmps } = setting
  const state = new StateAtSpeed()
  const motorThrust = motorThrustAt(line, beltSpeed)
  state.groundSpeed = groundSpeed
  state.beltSpeed = beltSpeed
  state.slip = slip
  state.thrust = Math.min(motorThrust, footing.gripThrust)
  setMotorsAtThrottle(state, setting)
  const { thrust, motorSpeed, motorTorque, motorAmps, noLoadAmps, packDriveAmps } = state
  const { count } = drive
  const packAmps = packDriveAmps + accessoryAmps
  const copperLoss = count * motorAmps * motorAmps * drive.motorResistance
  const ironLoss = count * motorSpeed * drive.torqueConstant * noLoadAmps
  const shaftPower = count * motorTorque * motorSpeed
  const packPower = machine.pack.openVolts * packAmps
  const drawn = Math.abs(packDriveAmps) > 0 && shaftPower > 0
  return {
    ...state,
    packAmps,
    packVolts: machine.pack.openVolts - packAmps * machine.pack.resistance,
    motorThrust,
    gripThrust: footing.gripThrust,
    resistance: resistanceAt(footing, airDragFactor, groundSpeed),
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
