import type { Machine } from '../machine/parts.ts'
import type { Footing } from '../ground/footing.ts'
import { shearShareInverse } from '../ground/soil-shear.ts'
import { dutyForAmps, noLoadAmpsAt } from '../motor/drive-line.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Motion } from './motion.ts'

/** Level travel at a steady speed: every number NaN where it cannot be held. */
export class CruiseState {
  /** m/s. */
  groundSpeed = NaN
  beltSpeed = NaN
  slip = NaN
  /** N. */
  thrust = NaN
  /** A of one motor. */
  motorAmps = NaN
  duty = NaN
  /** A with accessories. */
  packAmps = NaN
  /** s to the reserve. */
  seconds = NaN
  /** m to the reserve. */
  metres = NaN
}

/**
 * Slip that passes a thrust on this ground.
 *
 * coefficient: the entered slip;  soil: φ(i L/K) = F/(A c + W_t tan φ), solved for i.
 *
 * @param thrust F, N
 * @returns i, 0 to 1
 * *Source:* the inverse of Janosi and Hanamoto's shear, as in `ground/soil-shear.ts`.
 */
export function slipForThrust(machine: Machine, footing: Footing, thrust: number): number {
  if (machine.ground.model === 'coefficient') return machine.ground.slip
  return shearShareInverse(thrust / footing.shearStrength) / footing.fullShear
}

/**
 * Fills the state of level travel at a speed.
 *
 * F = R(v);  v_b = v/(1 − i);  T = (F + D) r/(G η M);  I = T/K_t + I_0(ω);  δ the smaller root of §3;
 * t = Ah (soc − reserve)/amps;  s = v t.
 *
 * @param groundSpeed v, m/s; NaN gives NaN
 * *Source:* `docs/model.md` §7; NaN where duty would pass the cap, current the limit or thrust the grip, or amps are 0.
 */
export function setCruise(cruise: CruiseState, machine: Machine, motion: Motion, groundSpeed: number): void {
  const { level, drive, line, airDragFactor, accessoryAmps } = motion
  const thrust = level.standingResistance + airDragFactor * groundSpeed * groundSpeed
  const slip = slipForThrust(machine, level, thrust)
  const beltSpeed = groundSpeed / (1 - slip)
  const motorSpeed = beltSpeed * line.motorPerBelt
  const torque = (thrust + internalDragAt(machine.track, beltSpeed)) / line.thrustPerTorque
  const amps = torque / drive.torqueConstant + noLoadAmpsAt(drive, motorSpeed)
  const duty = dutyForAmps(drive, amps, motorSpeed)
  const held = thrust <= level.gripThrust && amps <= drive.currentLimit && duty <= drive.duty
  const packAmps = held ? drive.count * duty * amps + accessoryAmps : NaN
  const usable = machine.pack.capacity * (machine.pack.stateOfCharge - machine.pack.reserve)
  cruise.groundSpeed = groundSpeed
  cruise.beltSpeed = beltSpeed
  cruise.slip = slip
  cruise.thrust = thrust
  cruise.motorAmps = held ? amps : NaN
  cruise.duty = held ? duty : NaN
  cruise.packAmps = packAmps > 0 ? packAmps : NaN
  cruise.seconds = usable / cruise.packAmps
  cruise.metres = cruise.seconds * groundSpeed
}
