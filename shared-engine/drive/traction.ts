import { shearShare } from '../ground/soil-shear.ts'
import type { DriveLine } from '../motor/drive-line.ts'
import { ampsAt, dutyForAmps, noLoadAmpsAt } from '../motor/drive-line.ts'
import { bracketedRoot } from '../numeric/root.ts'
import { internalDragAt } from '../track/drag.ts'
import type { DriveSetting, SettledRow } from './setting.ts'
import { slipForThrust } from '../vehicle/cruise.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { setDuty, setMotorsForThrust, type StateAtSpeed } from '../vehicle/state-at-speed.ts'
import { beltSpeedForThrust } from '../vehicle/thrust-line.ts'

/**
 * Current of one motor when nothing is fed back: where the belt drives the motor faster than the duty would, the switches
 * pass no current.
 */
function forwardAmps(drive: DriveLine, motorSpeed: number): number {
  return drive.duty > 0 ? Math.max(0, ampsAt(drive, motorSpeed)) : 0
}

/**
 * Force of the drive at the track, dragging included.
 *
 * F_m = M T G η/r − D(v_b) while the motor drives; where it is driven (T < 0) the gears take their share from the other
 * side: F_m = M T G/(r η) − D(v_b).
 *
 * *Source:* `docs/model.md` §5; the driven direction: power balance of a stage [assumption: the same efficiency both ways].
 */
function driveForce({ machine }: DriveSetting, { drive, line }: Propulsion, beltSpeed: number): number {
  const motorSpeed = beltSpeed * line.motorPerBelt
  const torque = drive.torqueConstant * (forwardAmps(drive, motorSpeed) - noLoadAmpsAt(drive, motorSpeed))
  const perTorque = torque < 0 ? line.thrustPerTorque / machine.train.efficiency ** 2 : line.thrustPerTorque
  return torque * perTorque - internalDragAt(machine.track, beltSpeed)
}

/**
 * Thrust and belt speed at a ground speed and the drive line's duty.
 *
 * Driving: slip and spinning as in `docs/model.md` §5. Dragging: the belt runs with the ground, up to the grip. Between them,
 * on `coefficient` ground, the drive neither pushes nor drags and the belt finds its own speed: so no slip makes energy.
 */
export function setThrottleTraction(
  out: StateAtSpeed,
  setting: DriveSetting,
  settled: SettledRow,
  propulsion: Propulsion,
  speed: number,
): void {
  const { machine } = setting
  const { drive, line } = propulsion
  const { gripThrust } = settled.footing
  const force = (beltSpeed: number) => driveForce(setting, propulsion, beltSpeed)
  const withGround = force(speed)
  if (withGround <= 0) setDragging(out, force, withGround, gripThrust, speed)
  else if (speed === 0 || machine.ground.model === 'coefficient') {
    const gripping = machine.ground.model === 'coefficient' ? 1 - machine.ground.slip : 1
    out.beltSpeed = speed / gripping
    out.thrust = force(out.beltSpeed)
    if (out.thrust > gripThrust) {
      out.thrust = gripThrust
      out.beltSpeed = beltSpeedForThrust(line, gripThrust)
    } else if (out.thrust < 0) {
      out.thrust = 0
      out.beltSpeed = beltSpeedForThrust(line, 0)
    }
  } else setSoilTraction(out, settled, force, beltSpeedForThrust(line, 0), speed)
  out.groundSpeed = speed
  out.motorSpeed = out.beltSpeed * line.motorPerBelt
  out.noLoadAmps = noLoadAmpsAt(drive, out.motorSpeed)
  out.motorAmps = forwardAmps(drive, out.motorSpeed)
  out.motorTorque = drive.torqueConstant * (out.motorAmps - out.noLoadAmps)
  settle(out, drive)
}

/** The drive holds back: with the ground's speed, or slower where it holds back more than the grip. */
function setDragging(
  out: StateAtSpeed,
  force: (beltSpeed: number) => number,
  withGround: number,
  grip: number,
  speed: number,
): void {
  out.thrust = Math.max(withGround, -grip)
  out.beltSpeed = speed
  if (withGround >= -grip) return
  out.beltSpeed = force(0) < -grip ? 0 : (bracketedRoot((belt) => force(belt) + grip, 0, speed) ?? speed)
}

/** Slip at which the soil's thrust is the drive's: F_s(i) = F_m(v/(1 − i)). */
function setSoilTraction(
  out: StateAtSpeed,
  { footing }: SettledRow,
  force: (beltSpeed: number) => number,
  freeBeltSpeed: number,
  speed: number,
): void {
  const excess = (slip: number) =>
    footing.shearStrength * shearShare(slip * footing.fullShear) - force(speed / (1 - slip))
  const slip = bracketedRoot(excess, 0, 1 - speed / freeBeltSpeed) ?? 0
  out.beltSpeed = speed / (1 - slip)
  out.thrust = force(out.beltSpeed)
}

/**
 * Current and belt speed that pass a given thrust, between dragging and full throttle.
 *
 * T = (F + D) r/(M G η), or · η²  where the motor is driven;  I = T/K_t + I_0(ω).
 */
export function setAskedTraction(
  out: StateAtSpeed,
  { machine }: DriveSetting,
  { footing }: SettledRow,
  propulsion: Propulsion,
  speed: number,
  thrust: number,
): void {
  const { drive } = propulsion
  const slip = thrust <= 0 ? 0 : slipForThrust(machine, footing, thrust)
  out.groundSpeed = speed
  out.thrust = thrust
  out.beltSpeed = speed / (1 - slip)
  setMotorsForThrust(out, machine, propulsion)
  if (out.motorTorque < 0) out.motorTorque *= machine.train.efficiency ** 2
  out.motorAmps = Math.max(0, out.motorTorque / drive.torqueConstant + out.noLoadAmps)
  settle(out, drive)
}

/** Slip of where ground and belt are, and the duty in force; that is 0 where no current flows. */
function settle(out: StateAtSpeed, drive: DriveLine): void {
  out.slip = out.beltSpeed > out.groundSpeed ? 1 - out.groundSpeed / out.beltSpeed : 0
  setDuty(out, drive.count, out.motorAmps > 0 ? dutyForAmps(drive, out.motorAmps, out.motorSpeed) : 0)
}
