import { gravity } from '../constants.ts'
import type { ChemistryId } from '../reference/chemistry.ts'

// What can be said of pack, track and body of a machine of which mass, pitch and capacity are known.

/** Ω·A·s of one cell: its resistance times its charge, for a few years of use at 20 °C. *Source:* common practice, no source. */
const cellGoodness: Readonly<Record<ChemistryId, number>> = { lipo: 54, lihv: 54, liion: 324, lifepo4: 240 }

/**
 * Resistance of a cell of a charge: larger cells have more area.
 *
 * R = g/Q, g = 15 mΩ·Ah (polymer), 90 (round), 67 (iron phosphate).
 *
 * @param charge Q, A·s of one cell
 * @returns Ω
 * *Source:* common practice, no source; off by a factor of two either way.
 */
export function assumedCellResistance(charge: number, chemistry: ChemistryId): number {
  return cellGoodness[chemistry] / charge
}

/**
 * Length of one loop of a machine of a mass.
 *
 * L = 0.65 ∛m, m in kg: machines of one shape and density.
 *
 * @returns m
 * *Source:* similar bodies; the factor common practice, no source.
 */
export function assumedLoopLength(mass: number): number {
  return 0.65 * Math.cbrt(mass)
}

/**
 * Length of the patch that a loop has on the ground: three tenths of its length.
 *
 * @param loop m round the loop
 * @returns m
 * *Source:* common practice, no source.
 */
export function assumedContactLength(loop: number): number {
  return 0.3 * loop
}

/**
 * Width of a loop: an eighth of its length where the machine has one, a sixteenth where it has more.
 *
 * @param loop m round the loop
 * @returns m
 * *Source:* common practice, no source.
 */
export function assumedContactWidth(loop: number, loops: number): number {
  return loop / (loops === 1 ? 8 : 16)
}

/**
 * Mass per metre of a loop of rubber, from its pitch and width.
 *
 * λ = ρ w · 0.3 p: with its lugs as thick, on average, as three tenths of the pitch; ρ = 1,200 kg/m³.
 *
 * @param pitch p, m
 * @param width w, m
 * @returns kg/m
 * *Source:* density of filled rubber, handbook value from memory; the thickness common practice, no source.
 */
export function assumedLoopDensity(pitch: number, width: number): number {
  return 1200 * width * 0.3 * pitch
}

/**
 * Drag of the track itself: a share of the weight.
 *
 * D = 0.06 m g.
 *
 * @param mass m, kg
 * @returns N of all loops
 * *Source:* common practice, no source.
 */
export function assumedTrackDrag(mass: number): number {
  return 0.06 * mass * gravity
}

/**
 * Frontal area of a machine of a mass.
 *
 * A = 0.015 m^(2/3), m in kg: machines of one shape and density.
 *
 * @returns m²
 * *Source:* similar bodies; the factor common practice, no source.
 */
export function assumedFrontalArea(mass: number): number {
  return 0.015 * Math.cbrt(mass) ** 2
}

/** Drag coefficient of a body with blunt edges. *Source:* Hoerner, Fluid-Dynamic Drag, bluff bodies, about 1; from memory. */
export const assumedDragCoefficient = 1

/**
 * Shafts of a belt reduction apart: as near as half of what lies on both pulleys, common for a drive that is not wrapped.
 *
 * C = (z_1 + z_2) p/4.
 *
 * @param teeth z_1 + z_2
 * @param pitch p, m
 * @returns m
 * *Source:* common practice, no source.
 */
export function assumedCentre(teeth: number, pitch: number): number {
  return (teeth * pitch) / 4
}
