import { resistanceAt } from '../ground/resistance.ts'
import { shearShare } from '../ground/soil-shear.ts'
import { ampsAt, dutyAt, noLoadAmpsAt } from '../motor/drive-line.ts'
import { bracketedRoot } from '../numeric/root.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { beltSpeedForThrust, motorThrustAt } from '../vehicle/thrust-line.ts'
import { setDraw } from './electrics.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Moment } from './moment.ts'

/** Current of one motor at the throttle: where the belt drives the motor faster than the duty would, nothing is fed back. */
export function forwardAmps({ drive }: Propulsion, motorSpeed: number): number {
  return Math.max(0, ampsAt(drive, motorSpeed))
}

/**
 * Force of the motors at the track at the throttle, dragging included.
 *
 * F_m = M T G η/r − D(v_b) while the motor drives; where it is driven (T < 0) the gears take their share from the other
 * side: F_m = M T G/(r η) − D(v_b).
 *
 * *Source:* `docs/model.md` §5; the driven direction: power balance of a stage [assumption: the same efficiency both ways].
 */
export function driveForceAt(model: DriveModel, propulsion: Propulsion, beltSpeed: number): number {
  const { drive, line } = propulsion
  const motorSpeed = beltSpeed * line.motorPerBelt
  const torque =
    drive.torqueConstant * (forwardAmps(propulsion, motorSpeed) - noLoadAmpsAt(drive, motorSpeed))
  return forceOfTorque(model, propulsion, torque) - internalDragAt(model.machine.track, beltSpeed)
}

/** N at the track for a torque of one motor, either way; the drag is not taken off. */
export function forceOfTorque({ machine }: DriveModel, { line }: Propulsion, torque: number): number {
  const force = torque * line.thrustPerTorque
  return torque < 0 ? force / (machine.train.efficiency * machine.train.efficiency) : force
}

/** Sets force and belt speed of a track that grips, at the throttle of the propulsion. */
function setGripping(moment: Moment, model: DriveModel, row: SettledRow, propulsion: Propulsion): void {
  const { speed } = moment
  const withGround = driveForceAt(model, propulsion, speed)
  if (withGround < 0) {
    moment.force = withGround
    moment.beltSpeed = speed
  } else if (model.machine.ground.model === 'soil') setOnSoil(moment, model, row, propulsion)
  else {
    moment.beltSpeed = speed / (1 - model.slip)
    moment.force = driveForceAt(model, propulsion, moment.beltSpeed)
    if (moment.force >= 0) return
    // Between driving and dragging: the belt finds the speed at which the motors neither push nor hold back.
    moment.force = 0
    moment.beltSpeed = beltSpeedForThrust(propulsion.line, 0)
  }
}

/** Slip at which the soil's thrust is the motors': F_s(i) = F_m(v/(1 − i)); at rest at most the grip. */
function setOnSoil(moment: Moment, model: DriveModel, row: SettledRow, propulsion: Propulsion): void {
  const { speed } = moment
  const { gripThrust, shearStrength, fullShear } = row.ground.footing
  if (!(speed > 0)) {
    const most = motorThrustAt(propulsion.line, 0)
    moment.force = Math.min(most, gripThrust)
    moment.beltSpeed = most > gripThrust ? beltSpeedForThrust(propulsion.line, gripThrust) : 0
    return
  }
  const free = beltSpeedForThrust(propulsion.line, 0)
  // By the belt's speed, not by the slip: of a machine that has all but stopped, slip is 1 to the last digit at any belt speed.
  const thrustOf = (belt: number) => shearStrength * shearShare(((belt - speed) / belt) * fullShear)
  const excess = (belt: number) => thrustOf(belt) - driveForceAt(model, propulsion, belt)
  moment.beltSpeed = bracketedRoot(excess, speed, free) ?? speed
  moment.force = thrustOf(moment.beltSpeed)
}

/**
 * How fast a gripping track at full throttle would speed up, m/s²; sets force and belt speed too.
 *
 * v̇ = (F_m − R)/m_g, at least −(F_max + R)/m.
 */
export function setFullThrottle(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
): void {
  setGripping(moment, model, row, propulsion)
  const least = -(row.ground.footing.gripThrust + moment.resistance) / row.ground.mass
  moment.acceleration = Math.max((moment.force - moment.resistance) / row.drivenMass, least)
}

/**
 * A throttle row at an instant, while the track grips.
 *
 * m_g v̇ = F_m(v/(1 − i)) − R;  ground: R + m v̇.
 *
 * *Source:* `docs/model.md` §7, full run.
 */
export function setThrottle(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
): void {
  setFullThrottle(moment, model, row, propulsion)
  moment.thrust = moment.resistance + row.ground.mass * moment.acceleration
  moment.spinning = false
  moment.brakeForce = 0
  setDrawAtThrottle(moment, propulsion)
}

/**
 * A throttle row while the track spins: belt and machine each by themselves.
 *
 * m v̇ = F_max − R, not backwards;  m_r v̇_b = F_m(v_b) − F_max.
 */
export function setSpinning(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  beltSpeed: number,
): void {
  const { gripThrust } = row.ground.footing
  const freely = (gripThrust - moment.resistance) / row.ground.mass
  moment.beltSpeed = beltSpeed
  moment.force = driveForceAt(model, propulsion, beltSpeed)
  moment.thrust = gripThrust
  moment.acceleration = moment.speed > 0 ? freely : Math.max(0, freely)
  moment.beltAcceleration = (moment.force - gripThrust) / model.rotorMass
  moment.spinning = true
  moment.brakeForce = 0
  setDrawAtThrottle(moment, propulsion)
}

/** What the motors draw at the throttle and the moment's belt speed. */
export function setDrawAtThrottle(moment: Moment, propulsion: Propulsion): void {
  const motorSpeed = moment.beltSpeed * propulsion.line.motorPerBelt
  const amps = forwardAmps(propulsion, motorSpeed)
  const duty = amps > 0 ? dutyAt(propulsion.drive, motorSpeed) : 0
  setDraw(moment.straight, moment, propulsion, motorSpeed, amps, duty)
}

/** R(v) of a row. */
export function resistanceOf(model: DriveModel, row: SettledRow, speed: number): number {
  return resistanceAt(row.ground.footing, model.airDragFactor, speed)
}
