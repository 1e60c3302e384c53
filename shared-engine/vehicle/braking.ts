import type { Machine } from '../machine/parts.ts'
import type { Propulsion } from './propulsion.ts'

/** What pushes and what has to be stopped. */
type BrakingMotion = Propulsion & { readonly equivalentMass: number }

/**
 * All that slows a machine, by its speed v = v_b: motors that feed back, drag and iron loss, wheel brake, ground and air,
 * as far as the grip lets it.
 *
 * back = M K_t (I + I_0) G/(r η) + D + brakeForce, I up to I_br(v) = min(brakeAmps, ω K_t/R_s);
 * a = min[(back + R)/m_e, (F_max + R)/m], R = R_0 + k v²; of m_e a − R the motors take the first part.
 *
 * *Source:* `docs/model.md` §7; the gears take their share from the other side: assumption.
 */
export class Braking {
  /** kg that the grip and that the brakes have to stop. */
  mass = 1
  equivalentMass = 1
  /** F_max, N. */
  grip = 0
  /** R_0, N, tow left out, and k, N/(m/s)². */
  standing = 0
  airDragFactor = 0
  /** Drag and iron loss, N and N/(m/s). */
  drag = 0
  dragSlope = 0
  /** Motors that feed back: N/(m/s) while shorted, and N at the most that is set. */
  shorted = 0
  most = 0
  /** Wheel brake, N. */
  wheel = 0
  /** N of braking for one ampere in each motor. */
  perAmp = 1
}

/** Fills what slows a machine; its ground is set apart, by {@link setBrakingGround}. */
export function setBrakingParts(braking: Braking, machine: Machine, motion: BrakingMotion): void {
  const { drive, line } = motion
  const { track, train, vehicle, controller } = machine
  const perAmp = (line.thrustPerTorque * drive.torqueConstant) / (train.efficiency * train.efficiency)
  const shortedAmps = (line.motorPerBelt * drive.torqueConstant) / drive.seriesResistance
  braking.mass = vehicle.mass
  braking.equivalentMass = motion.equivalentMass
  braking.drag = track.internalDrag + perAmp * drive.noLoadBase
  braking.dragSlope = track.internalDragPerSpeed + perAmp * drive.noLoadSlope * line.motorPerBelt
  braking.shorted = perAmp * shortedAmps
  braking.most = perAmp * controller.brakeAmps
  braking.wheel = vehicle.brakeForce
  braking.perAmp = perAmp
}

/**
 * Fills the ground of {@link Braking}.
 *
 * @param standing R_0, N, without tow
 * @param grip F_max, N
 */
export function setBrakingGround(
  braking: Braking,
  standing: number,
  grip: number,
  airDragFactor: number,
): void {
  braking.standing = standing
  braking.grip = grip
  braking.airDragFactor = airDragFactor
}

/** Braking force of the motors that feed back as much as they may, N. */
function motorsAt(braking: Braking, speed: number): number {
  return Math.min(braking.shorted * speed, braking.most)
}

/**
 * How far the brakes together are above what the grip lets them have, N: positive where they would slide.
 *
 * *Source:* both sides of the minimum of {@link Braking}, times m_e.
 */
export function slidingAt(braking: Braking, speed: number): number {
  const { drag, dragSlope, wheel, standing, airDragFactor } = braking
  const back = motorsAt(braking, speed) + drag + dragSlope * speed + wheel
  const resistance = standing + airDragFactor * speed * speed
  return back + resistance - (braking.equivalentMass * (braking.grip + resistance)) / braking.mass
}

/**
 * Deceleration at a speed.
 *
 * @param speed v, m/s
 * @returns a, m/s²
 * *Source:* {@link Braking}.
 */
export function decelerationAt(braking: Braking, speed: number): number {
  const resistance = braking.standing + braking.airDragFactor * speed * speed
  const back = motorsAt(braking, speed) + braking.drag + braking.dragSlope * speed + braking.wheel
  return Math.min((back + resistance) / braking.equivalentMass, (braking.grip + resistance) / braking.mass)
}

/**
 * What the grip leaves to the motors that feed back, N, where all brakes would slide.
 *
 * *Source:* m_e a − R less drag and iron loss, {@link Braking}.
 */
export function leftToMotors(braking: Braking, speed: number): number {
  const resistance = braking.standing + braking.airDragFactor * speed * speed
  const held = (braking.equivalentMass * (braking.grip + resistance)) / braking.mass
  return held - resistance - braking.drag - braking.dragSlope * speed
}

/**
 * Current that each motor feeds back at a speed.
 *
 * @returns A, ≥ 0
 * *Source:* {@link Braking}: of what the grip leaves the motors take the first part.
 */
export function brakeAmpsAt(braking: Braking, speed: number): number {
  const motors = motorsAt(braking, speed)
  if (slidingAt(braking, speed) <= 0) return motors / braking.perAmp
  return Math.max(0, Math.min(motors, leftToMotors(braking, speed))) / braking.perAmp
}
