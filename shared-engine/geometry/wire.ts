import { copperResistivity } from '../constants.ts'

/** m over the copper of gauge 36, and parts into which each 92-fold of the diameter is divided. */
const finest = 0.127e-3
const gaugeSteps = 39

/**
 * Copper section of an American wire gauge.
 *
 * d = 0.127 mm · 92^((36 − g)/39);  A = π d²/4.
 *
 * @param gauge g, −3 for 4/0 to 40
 * @returns m²
 * *Source:* ASTM B258, nominal diameters of solid round wires.
 * @example gaugeArea(12) // 3.309e-6
 */
export function gaugeArea(gauge: number): number {
  const diameter = finest * 92 ** ((36 - gauge) / gaugeSteps)
  return (Math.PI / 4) * diameter * diameter
}

/**
 * Resistance of equal wires side by side at 20 °C, connectors not counted.
 *
 * R = ρ L/(A n), ρ = 0.017241 Ω mm²/m.
 *
 * @param area A, m² of one wire
 * @param length L, m, there and back
 * @param parallel n
 * @returns Ω
 * *Source:* IEC 60028, annealed copper.
 * @example wireResistance(1e-6, 1, 1) // 0.017241
 */
export function wireResistance(area: number, length: number, parallel: number): number {
  return (copperResistivity * length) / (area * parallel)
}

/**
 * Diameter over the insulation where it is not given: the copper's and 0.8 mm of insulation all round.
 *
 * D = √(4 A/π) + 1.6 mm.
 *
 * @returns m
 * *Source:* assumption: thin hook-up wire.
 */
export function insulatedDiameter(area: number): number {
  return Math.sqrt((4 * area) / Math.PI) + 1.6e-3
}
