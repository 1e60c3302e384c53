import type { Machine } from '../machine/parts.ts'
import type { Footing } from '../ground/footing.ts'
import type { DriveLine } from '../motor/drive-line.ts'
import type { ThrustLine } from './thrust-line.ts'

/**
 * Push of each side that turns the machine on the spot, one side ahead, the other astern.
 *
 * F_p = μ_t W_t L/(4 B) + R_g/2, on the level.
 *
 * @param level footing without slope
 * @returns N per side; NaN where motors or loops are not even in number, or gauge, contact length or μ_t are not given
 * *Source:* Wong, Theory of Ground Vehicles, skid steering with uniform pressure; sideways drag takes no grip from the
 * push and skis count in R_g alone: `docs/model.md` §5, assumption.
 */
export function pivotThrustOf(machine: Machine, level: Footing): number {
  const { gauge, contactLength } = machine.vehicle
  const turnFriction = machine.ground.turnFriction
  const even = machine.motor.count % 2 === 0 && machine.track.count % 2 === 0
  if (!even || gauge === null || contactLength === null || turnFriction === null) return NaN
  return (turnFriction * level.trackWeight * contactLength) / (4 * gauge) + level.groundResistance / 2
}

/**
 * Current of one motor in the pivot turn.
 *
 * T = (F_p + D(0)/2) r/(G η) · 2/M;  I = T/K_t + I_0(0).
 *
 * @param thrust F_p, N per side
 * @returns A; NaN without F_p
 * *Source:* `docs/model.md` §5.
 */
export function pivotAmpsOf(machine: Machine, drive: DriveLine, line: ThrustLine, thrust: number): number {
  const torque = (2 * (thrust + machine.track.internalDrag / 2)) / line.thrustPerTorque
  return torque / drive.torqueConstant + drive.noLoadBase
}
