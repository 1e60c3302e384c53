import type { Machine, PatternRowPart } from '../machine/parts.ts'
import { type Footing, setFooting } from './footing.ts'

/**
 * Fills the ground of one row of a pattern: its slope, load and tow, and how much of resistance and grip there is.
 *
 * @param grade rise over run, of the row or the build
 * *Source:* `docs/model.md` §5 with the row's entries; centre of mass as built.
 */
export function setRowFooting(footing: Footing, machine: Machine, row: PatternRowPart, grade: number): void {
  const { vehicle } = machine
  const cosine = 1 / Math.sqrt(1 + grade * grade)
  const mass = row.load === null ? vehicle.mass : vehicle.dryMass + row.load
  setFooting(footing, machine, grade * cosine, cosine, mass, row.tow ?? vehicle.towForce)
  footing.standingResistance += (row.resistanceShare - 1) * footing.groundResistance
  footing.groundResistance *= row.resistanceShare
  footing.gripThrust *= row.gripShare
  footing.shearStrength *= row.gripShare
}
