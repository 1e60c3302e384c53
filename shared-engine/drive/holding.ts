import { shearShareInverse } from '../ground/soil-shear.ts'
import { noLoadAmpsAt } from '../motor/drive-line.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Propulsion } from '../vehicle/propulsion.ts'
import { driverTime } from './drive.ts'
import { driveForceAt, forceOfTorque, setFullThrottle } from './driving.ts'
import { heldDutyFor, setDraw } from './electrics.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Moment } from './moment.ts'

/** Slip beyond which a held speed on soil is not followed. *Source:* assumption. */
const mostSlip = 0.99

/**
 * A row that holds a speed.
 *
 * v̇ = (v* − v)/1 s, at most (F_max − R)/m and what full throttle gives, at least −(F_max + R)/m and what all brakes give;
 * F = R + m_g v̇, slip of the thrust R + m v̇.
 *
 * *Source:* `docs/model.md` §7, full run; the driver's second is an assumption.
 */
export function setHolding(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  wanted: number,
): void {
  const { mass, footing } = row.ground
  const { gripThrust } = footing
  const { resistance, speed } = moment
  let asked = Math.min((wanted - speed) / driverTime, (gripThrust - resistance) / mass)
  if (!isWithinReach(moment, model, row, propulsion, asked)) {
    setFullThrottle(moment, model, row, propulsion)
    asked = Math.min(asked, moment.acceleration)
  }
  const grip = -(gripThrust + resistance) / mass
  asked = Math.max(asked, grip, brakedAt(moment, model, row, propulsion, 1))
  moment.acceleration = asked
  moment.thrust = resistance + mass * asked
  const slip = moment.thrust > 0 ? slipOf(model, row, moment.thrust) : 0
  moment.beltSpeed = speed / (1 - slip)
  setForce(moment, model, propulsion, resistance + row.drivenMass * asked, 1, Infinity)
}

/** Whether full throttle speeds up more than that, without looking for its slip. */
function isWithinReach(
  { resistance, speed }: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  asked: number,
): boolean {
  const force = resistance + row.drivenMass * asked
  if (force <= 0) return driveForceAt(model, propulsion, speed) >= force
  if (model.machine.ground.model === 'soil' && force >= row.ground.footing.gripThrust) return false
  const slip = slipOf(model, row, force)
  return slip < 1 && driveForceAt(model, propulsion, speed / (1 - slip)) >= force
}

function slipOf({ machine, slip }: DriveModel, { ground: { footing } }: SettledRow, thrust: number): number {
  if (machine.ground.model === 'coefficient') return slip
  return Math.min(mostSlip, shearShareInverse(thrust / footing.shearStrength) / footing.fullShear)
}

/**
 * Most current that a motor can charge with, A.
 *
 * I_br = min(brakeAmps, ω K_t/R_s): beyond that even a short circuit passes no more, and charges nothing.
 *
 * *Source:* `docs/model.md` §7, steady rows.
 */
function brakeAmpsAt({ machine }: DriveModel, { drive }: Propulsion, motorSpeed: number): number {
  return Math.min(machine.controller.brakeAmps, (motorSpeed * drive.torqueConstant) / drive.seriesResistance)
}

/**
 * How fast a share of the brakes slows it down, m/s², negative; on a steep slope it may still speed up.
 *
 * back = M K_t (I + I_0) G/(r η) + D + b · brakeForce, I = b I_br;  v̇ = −min[(back + R)/m_g, (F_max + R)/m].
 *
 * *Source:* `docs/model.md` §7, braking.
 */
function brakedAt(
  { speed, resistance }: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  share: number,
): number {
  const { drive, line } = propulsion
  const motorSpeed = speed * line.motorPerBelt
  const amps = share * brakeAmpsAt(model, propulsion, motorSpeed)
  const torque = -drive.torqueConstant * (amps + noLoadAmpsAt(drive, motorSpeed))
  const { track, vehicle } = model.machine
  const back =
    internalDragAt(track, speed) + share * vehicle.brakeForce - forceOfTorque(model, propulsion, torque)
  const { mass, footing } = row.ground
  return -Math.min((back + resistance) / row.drivenMass, (footing.gripThrust + resistance) / mass)
}

/**
 * A row that brakes, or rolls with the throttle shut: the motors first, what they cannot hold is the wheel brake's.
 *
 * A shut throttle drives nothing: where the ground takes less than the motors hold back by themselves, none flows and the
 * belt skids.
 */
export function setBraking(
  moment: Moment,
  model: DriveModel,
  row: SettledRow,
  propulsion: Propulsion,
  share: number,
): void {
  moment.acceleration = brakedAt(moment, model, row, propulsion, share)
  moment.thrust = moment.resistance + row.ground.mass * moment.acceleration
  moment.beltSpeed = moment.speed
  setForce(moment, model, propulsion, moment.resistance + row.drivenMass * moment.acceleration, share, 0)
}

/**
 * Current for a force at the track, as much of it as the motors can.
 *
 * T = (F + D) r/(G η M), or with η on top where the track drives;  I = T/K_t + I_0, at least −b I_br.
 *
 * @param most A that the throttle lets flow: 0 where it is shut
 *
 * *Source:* `docs/model.md` §7, steady rows.
 */
function setForce(
  moment: Moment,
  model: DriveModel,
  propulsion: Propulsion,
  force: number,
  share: number,
  most: number,
): void {
  const { drive, line } = propulsion
  const { train, track, controller } = model.machine
  const motorSpeed = moment.beltSpeed * line.motorPerBelt
  const drag = internalDragAt(track, moment.beltSpeed)
  const pushed = (force + drag) / line.thrustPerTorque
  const torque = pushed < 0 ? pushed * train.efficiency * train.efficiency : pushed
  const noLoad = noLoadAmpsAt(drive, motorSpeed)
  const wanted = torque / drive.torqueConstant + noLoad
  const least = force < 0 ? -share * brakeAmpsAt(model, propulsion, motorSpeed) : 0
  const amps = Math.min(Math.max(wanted, least), most)
  moment.force =
    amps === wanted ? force : forceOfTorque(model, propulsion, drive.torqueConstant * (amps - noLoad)) - drag
  moment.brakeForce = Math.max(0, moment.force - force)
  moment.spinning = false
  const duty = heldDutyFor(propulsion, amps, motorSpeed, controller.throttleCap)
  setDraw(moment.straight, moment, propulsion, motorSpeed, amps, duty)
}
