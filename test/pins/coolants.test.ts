import { expect, it } from 'vitest'
import { type CoolantId, coolantOf } from '../../shared-engine/reference/coolants.ts'

// A pin: the table was taken from these values, so only a slip of the typing would show.

/**
 * Density kg/m³ and specific heat J/(kg·K) at 25 °C and one atmosphere.
 *
 * *Source:* water: IAPWS-95 formulation. Glycol by volume: ASHRAE Handbook: Fundamentals, physical properties of secondary
 * coolants, inhibited ethylene glycol; both evaluated with an open property library.
 */
const values: readonly (readonly [CoolantId, number, number, number])[] = [
  // 0.02 %: the table of this program rounds to four digits.
  ['water', 997.047, 4181.3, 2e-4],
  ['glycol30', 1043.3, 3659.6, 4e-4],
  ['glycol50', 1071.1, 3299.9, 4e-4],
]

it.each(values)('%s: %d kg/m³, %d J/(kg·K)', (id, density, heat, tolerance) => {
  expect(Math.abs(coolantOf(id).density / density - 1)).toBeLessThan(tolerance)
  expect(Math.abs(coolantOf(id).specificHeat / heat - 1)).toBeLessThan(tolerance)
})
