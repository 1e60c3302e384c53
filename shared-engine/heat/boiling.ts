import { standardPressure } from '../constants.ts'

/** Pa in a torr. *Source:* definition, 1/760 of a standard atmosphere. */
const torr = standardPressure / 760

/**
 * Temperature at which a coolant boils.
 *
 * 1730.63/(8.07131 − log₁₀ p) − 233.426 for water, p in torr, and by how much the mixture boils later.
 *
 * @param pressure Pa, absolute
 * @param rise K above water
 * @returns °C
 * *Source:* Antoine's equation of water, 1 to 100 °C; the mixture's rise from memory, `coolants.json`.
 * @example boilingPoint(101325, 0) // 99.997
 */
export function boilingPoint(pressure: number, rise: number): number {
  return 1730.63 / (8.07131 - Math.log10(pressure / torr)) - 233.426 + rise
}
