import type { Machine } from '../machine/parts.ts'
import type { Footing } from '../ground/footing.ts'
import { dutyForAmps, type DriveLine } from '../motor/drive-line.ts'
import type { ThrustLine } from './thrust-line.ts'

/**
 * Thrust at which the front comes up, about the patch's rear edge.
 *
 * F_l = (W x − F_t h_t)/h + F_t + R_g′; 0 where negative. The same at any speed up to the corner.
 *
 * @param lifted footing with all weight on the tracks
 * @returns N; NaN without the height h and the lead x of the centre of mass
 * *Source:* moments about the rear edge; rotor and loop inertia left out, the safe side: `docs/model.md` §5, assumption.
 */
export function frontLiftThrustOf(machine: Machine, lifted: Footing): number {
  const { centreHeight, centreAhead, towForce, towHeight } = machine.vehicle
  if (centreHeight === null || centreAhead === null) return NaN
  const righting = lifted.weight * centreAhead - towForce * towHeight
  return Math.max(0, righting / centreHeight + towForce + lifted.groundResistance)
}

/**
 * Smallest throttle at which the front comes up at rest.
 *
 * I = (F_l + D(0)) r/(M G η K_t) + I_0(0); the duty that passes I at rest.
 *
 * @param lifted footing with all weight on the tracks
 * @param liftThrust F_l, N
 * @returns duty, 0 where no current is needed; NaN where no throttle up to the cap reaches it or grip stays below it
 * *Source:* `docs/model.md` §5.
 */
export function frontLiftDutyOf(
  machine: Machine,
  lifted: Footing,
  drive: DriveLine,
  line: ThrustLine,
  liftThrust: number,
): number {
  if (!(lifted.gripThrust >= liftThrust)) return NaN
  const torque = (liftThrust + machine.track.internalDrag) / line.thrustPerTorque
  const amps = torque / drive.torqueConstant + drive.noLoadBase
  if (amps <= 0) return 0
  if (amps > drive.currentLimit) return NaN
  const duty = dutyForAmps(drive, amps, 0)
  return duty <= drive.duty ? duty : NaN
}
