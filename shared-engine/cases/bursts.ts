import type { Machine } from '../machine/parts.ts'
import { ampsAt, dutyAt, dutyForAmps } from '../motor/drive-line.ts'
import type { Motion } from '../vehicle/motion.ts'
import { beltSpeedForThrust, motorThrustAt } from '../vehicle/thrust-line.ts'
import type { TopState } from '../vehicle/top-state.ts'
import { apart, caseNumber } from './case.ts'

/** The greatest currents that the ground lets happen, in the running state; NaN where one does not arise. */
export class Bursts {
  /** A of one motor: held at rest, spinning at full throttle, at top speed, in the pivot turn. */
  restAmps = NaN
  spinAmps = NaN
  topAmps = NaN
  pivotAmps = NaN
  /** The largest of them, and where, as a `caseNumber`. */
  motorAmps = NaN
  motorCase: number = caseNumber.rest
  /** A of the pack with accessories, its volts then, and where. */
  packAmps = NaN
  packVolts = NaN
  packCase: number = caseNumber.run
  /** A of one motor and V of the pack as a spin-up begins. */
  spinUpAmps = NaN
  spinUpVolts = NaN
}

/**
 * Fills the bursts.
 *
 * rest: the least of the most standstill amps and those of F_max at ω = 0, at least 0;  spin, where F_m(0) > F_max: full
 * throttle at the belt speed of F_m = F_max;  top;  pivot: at most the most standstill amps.
 * Pack: the most at full throttle from spin's speed, else 0, to top speed; and pivot's amps at ω = 0.
 *
 * @param restAmps most standstill amps of any throttle, A
 * @param pivotAmps A of one motor; NaN without a pivot turn
 * *Source:* `docs/model.md` §3.
 */
export function setBursts(
  bursts: Bursts,
  machine: Machine,
  motion: Motion,
  top: TopState,
  restAmps: number,
  pivotAmps: number,
): void {
  const { drive, line, footing } = motion
  const spins = motorThrustAt(line, 0) > footing.gripThrust
  const gripAmps = ampsForThrust(motion, machine.track.internalDrag, footing.gripThrust)
  const spinBelt = spins ? beltSpeedForThrust(line, footing.gripThrust) : 0
  bursts.restAmps = Math.max(0, Math.min(restAmps, gripAmps))
  bursts.spinAmps = spins ? ampsAt(drive, spinBelt * line.motorPerBelt) : NaN
  bursts.topAmps = top.motorAmps
  bursts.pivotAmps = Math.min(pivotAmps, restAmps)
  setWorstMotor(bursts)
  const from = spinBelt * line.motorPerBelt
  const runAmps = mostDriveAmps(motion, from, top.exists ? top.motorSpeed : from)
  setWorstPack(bursts, machine, motion, runAmps)
  setSpinUp(bursts, machine, motion, spins)
}

/** I = (F + D(0)) r/(M G η K_t) + I_0(0). */
function ampsForThrust({ drive, line }: Motion, drag: number, thrust: number): number {
  return (thrust + drag) / (line.thrustPerTorque * drive.torqueConstant) + drive.noLoadBase
}

function setWorstMotor(bursts: Bursts): void {
  bursts.motorAmps = bursts.restAmps
  bursts.motorCase = caseNumber.rest
  worsen(bursts, bursts.spinAmps, caseNumber.spin)
  worsen(bursts, bursts.topAmps, caseNumber.top)
  worsen(bursts, bursts.pivotAmps, caseNumber.pivot)
}

function worsen(bursts: Bursts, amps: number, reached: number): void {
  if (!(amps > bursts.motorAmps * apart)) return
  bursts.motorAmps = amps
  bursts.motorCase = reached
}

/** Drive amps of the pack rise under the current limit and fall above its corner. */
function mostDriveAmps({ drive }: Motion, from: number, to: number): number {
  const worst = Math.min(Math.max(drive.cornerSpeed, from), Math.max(from, to))
  return drive.count * dutyAt(drive, worst) * ampsAt(drive, worst)
}

function setWorstPack(bursts: Bursts, machine: Machine, motion: Motion, runAmps: number): void {
  const { drive, accessoryAmps } = motion
  const { pivotAmps } = bursts
  const duty = Math.min(dutyForAmps(drive, pivotAmps, 0), drive.duty)
  const pivot = drive.count * duty * pivotAmps
  bursts.packCase = pivot > runAmps * apart ? caseNumber.pivot : caseNumber.run
  bursts.packAmps = (bursts.packCase === caseNumber.pivot ? pivot : runAmps) + accessoryAmps
  bursts.packVolts = machine.pack.openVolts - bursts.packAmps * machine.pack.resistance
}

function setSpinUp(bursts: Bursts, machine: Machine, motion: Motion, spins: boolean): void {
  const { drive, accessoryAmps } = motion
  bursts.spinUpAmps = bursts.spinUpVolts = NaN
  if (!spins) return
  bursts.spinUpAmps = ampsAt(drive, 0)
  const packAmps = drive.count * dutyAt(drive, 0) * bursts.spinUpAmps + accessoryAmps
  bursts.spinUpVolts = machine.pack.openVolts - packAmps * machine.pack.resistance
}
