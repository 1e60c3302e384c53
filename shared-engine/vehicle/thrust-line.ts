import type { Machine } from '../machine/parts.ts'
import type { DriveLine } from '../motor/drive-line.ts'

/**
 * Motor-side thrust against belt speed at one throttle: two straight pieces, the current limit's and the circuit's.
 *
 * F_m(v_b) = M T G η/r − D(v_b), with T linear in ω = v_b G/r on either side of the corner.
 */
export class ThrustLine {
  /** N at rest and N per m/s below the corner; the limit is Infinity without one and never used then. */
  limitedStart = Infinity
  limitedSlope = 0
  /** The same above it. */
  openStart = 0
  openSlope = 0
  /** m/s of belt for 1 N less thrust, below and above the corner; Infinity on a flat limit. */
  limitedGive = Infinity
  openGive = 0
  /** m/s of the belt; −Infinity without a current limit. */
  cornerSpeed = -Infinity
  /** N at the corner. */
  cornerThrust = Infinity
  /** rad/s of the motor for 1 m/s of belt: G/r. */
  motorPerBelt = 0
  /** N at the track for 1 N·m of one motor: M G η/r. */
  thrustPerTorque = 0
}

/**
 * Fills a thrust line from a drive line.
 *
 * *Source:* `docs/model.md` §5; power is conserved but for the stages' efficiencies.
 */
export function setThrustLine(line: ThrustLine, machine: Machine, drive: DriveLine): void {
  const { train, track, motor } = machine
  const motorPerBelt = train.ratio / track.radius
  const thrustPerTorque = motor.count * train.efficiency * motorPerBelt
  const perAmp = thrustPerTorque * drive.torqueConstant
  const noLoadSlope = drive.noLoadSlope * motorPerBelt
  line.motorPerBelt = motorPerBelt
  line.thrustPerTorque = thrustPerTorque
  line.limitedStart = perAmp * (drive.currentLimit - drive.noLoadBase) - track.internalDrag
  line.limitedSlope = perAmp * noLoadSlope + track.internalDragPerSpeed
  const openAmps = (drive.duty * drive.volts) / drive.loopResistance
  const ampsPerSpeed = (drive.torqueConstant * motorPerBelt) / drive.loopResistance
  line.openStart = perAmp * (openAmps - drive.noLoadBase) - track.internalDrag
  line.openSlope = perAmp * (ampsPerSpeed + noLoadSlope) + track.internalDragPerSpeed
  line.limitedGive = 1 / line.limitedSlope
  line.openGive = 1 / line.openSlope
  line.cornerSpeed = drive.cornerSpeed / motorPerBelt
  line.cornerThrust =
    line.cornerSpeed > 0 ? line.limitedStart - line.limitedSlope * line.cornerSpeed : Infinity
}

/**
 * Motor-side thrust at a belt speed.
 *
 * @param beltSpeed v_b, m/s
 * @returns F_m, N
 * *Source:* `docs/model.md` §5, F_m = M T G η/r − D.
 */
export function motorThrustAt(line: ThrustLine, beltSpeed: number): number {
  return beltSpeed < line.cornerSpeed
    ? line.limitedStart - line.limitedSlope * beltSpeed
    : line.openStart - line.openSlope * beltSpeed
}

/**
 * Belt speed at which the motors push with a given force: the inverse of {@link motorThrustAt}.
 *
 * @param thrust N, at most that at rest
 * @returns m/s
 */
export function beltSpeedForThrust(line: ThrustLine, thrust: number): number {
  if (line.cornerSpeed > 0 && thrust > line.cornerThrust) {
    return (line.limitedStart - thrust) / line.limitedSlope
  }
  return (line.openStart - thrust) / line.openSlope
}
