import { gravity } from '../constants.ts'
import { Footing, setFooting } from '../ground/footing.ts'
import type { Machine, PatternRowPart } from '../machine/parts.ts'
import { pivotThrustOf } from './pivot.ts'

/** What one row of a drive pattern puts under the machine. */
export interface RowGround {
  /** On the row's slope, with its load, tow and shares. */
  readonly footing: Footing
  /** m, kg, with the row's load. */
  readonly mass: number
  /** sin θ. */
  readonly sine: number
  /** m g sin θ, N. */
  readonly slopeForce: number
  /** N. */
  readonly tow: number
  /** F_p on the level, N per side; NaN where the machine cannot turn on the spot or an entry is missing. */
  readonly pivotThrust: number
}

/**
 * The ground of one row: the build's, with the row's slope, load and tow in place of the build's own, and its shares of
 * rolling resistance, grip and turn friction.
 *
 * R_g′ = resistanceShare · R_g;  F_max′, F_s′, μ_t′ = gripShare · F_max, F_s, μ_t.
 *
 * *Source:* `docs/model.md` §5 with these numbers put in; the shares are the driver's own judgement of wetter or deeper
 * ground.
 */
export function rowGroundOf(machine: Machine, row: PatternRowPart): RowGround {
  const { vehicle, ground } = machine
  const mass = vehicle.dryMass + (row.load ?? vehicle.mass - vehicle.dryMass)
  const tow = row.tow ?? vehicle.towForce
  const loaded = { ...machine, vehicle: { ...vehicle, mass, towForce: tow } }
  const grade = row.grade ?? ground.grade
  const cosine = 1 / Math.hypot(1, grade)
  const footing = new Footing()
  setFooting(footing, loaded, grade * cosine, cosine)
  const level = new Footing()
  setFooting(level, loaded, 0, 1)
  level.groundResistance *= row.resistanceShare
  const sine = grade * cosine
  const slopeForce = mass * gravity * sine
  footing.groundResistance *= row.resistanceShare
  footing.standingResistance = footing.groundResistance + slopeForce + tow
  footing.gripThrust *= row.gripShare
  footing.shearStrength *= row.gripShare
  const turnFriction = ground.turnFriction === null ? null : ground.turnFriction * row.gripShare
  const turning = { ...loaded, ground: { ...ground, turnFriction } }
  return { footing, mass, sine, slopeForce, tow, pivotThrust: pivotThrustOf(turning, level) }
}
