import type { Machine } from '../machine/parts.ts'
import type { Footing } from '../ground/footing.ts'
import { resistanceAt } from '../ground/resistance.ts'
import { shearShareInverse } from '../ground/soil-shear.ts'
import { dutyForAmps } from '../motor/drive-line.ts'
import type { Motion } from './motion.ts'
import { setDuty, setMotorsForThrust, StateAtSpeed } from './state-at-speed.ts'

/** Level travel at a steady speed: every number NaN where it cannot be held. */
export class CruiseState extends StateAtSpeed {
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
 * t = Q/amps;  s = v t.
 *
 * @param groundSpeed v, m/s; NaN gives NaN
 * *Source:* `docs/model.md` §7; NaN where duty would pass the cap, current the limit or thrust the grip, or amps are 0.
 */
export function setCruise(cruise: CruiseState, machine: Machine, motion: Motion, groundSpeed: number): void {
  const { level, drive, airDragFactor, accessoryAmps } = motion
  cruise.groundSpeed = groundSpeed
  cruise.thrust = resistanceAt(level, airDragFactor, groundSpeed)
  cruise.slip = slipForThrust(machine, level, cruise.thrust)
  cruise.beltSpeed = groundSpeed / (1 - cruise.slip)
  setMotorsForThrust(cruise, machine, motion)
  setDuty(cruise, drive.count, dutyForAmps(drive, cruise.motorAmps, cruise.motorSpeed))
  const { thrust, motorAmps, duty } = cruise
  const held = thrust <= level.gripThrust && motorAmps <= drive.currentLimit && duty <= drive.duty
  if (!held) cruise.motorTorque = cruise.motorAmps = cruise.duty = cruise.packDriveAmps = NaN
  const packAmps = cruise.packDriveAmps + accessoryAmps
  cruise.packAmps = packAmps > 0 ? packAmps : NaN
  cruise.seconds = machine.pack.usable / cruise.packAmps
  cruise.metres = cruise.seconds * groundSpeed
}
