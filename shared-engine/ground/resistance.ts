import type { Machine } from '../machine/parts.ts'
import type { Footing } from './footing.ts'

/**
 * Air drag per speed squared.
 *
 * k = ½ ρ C_d A.
 *
 * @returns N/(m/s)²
 * *Source:* definition of the drag coefficient; density after ISO 2533.
 */
export function airDragFactorOf(machine: Machine): number {
  return 0.5 * machine.ground.airDensity * machine.vehicle.dragArea
}

/**
 * All that holds the machine back at a ground speed.
 *
 * R(v) = R_g + m g sin θ + ½ ρ C_d A v² + towForce.
 *
 * @param groundSpeed v, m/s
 * @returns N
 * *Source:* `docs/model.md` §5.
 */
export function resistanceAt(footing: Footing, airDragFactor: number, groundSpeed: number): number {
  return footing.standingResistance + airDragFactor * groundSpeed * groundSpeed
}
