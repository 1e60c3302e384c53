import { expect, it } from 'vitest'
import { type CoolantId, coolantOf, coolantViscosity } from '../../shared-engine/reference/coolants.ts'

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

/** *Source:* Melinder's correlation by mass for the same mixtures: another laboratory's fit, so 1 % apart is agreement. */
it.each([
  ['glycol30', 1039, 3688],
  ['glycol50', 1066, 3283],
] as const)('%s is within a percent of an independent correlation', (id, density, heat) => {
  expect(Math.abs(coolantOf(id).density / density - 1)).toBeLessThan(0.01)
  expect(Math.abs(coolantOf(id).specificHeat / heat - 1)).toBeLessThan(0.01)
})

/**
 * Viscosity, mPa·s. *Source:* water: IAPWS R12-08 table values at 25 °C (0.890) and 75 °C (0.378), from memory; between the
 * table's points a straight logarithm is within 4 % of them.
 */
it.each([
  ['water', 25, 0.89],
  ['water', 50, 0.5465],
  ['water', 75, 0.378],
] as const)('%s at %d °C: %d mPa·s', (id, celsius, wanted) => {
  expect(Math.abs((coolantViscosity(id, celsius) * 1000) / wanted - 1)).toBeLessThan(0.04)
})

it('a colder coolant is thicker, more glycol freezes later and boils later', () => {
  const ids = ['water', 'glycol30', 'glycol40', 'glycol50', 'glycol60'] as const
  for (const id of ids) expect(coolantViscosity(id, 5)).toBeGreaterThan(coolantViscosity(id, 35))
  for (const [at, id] of ids.entries()) {
    const before = ids[at - 1]
    if (before === undefined) continue
    expect(coolantOf(id).freezes).toBeLessThan(coolantOf(before).freezes)
    expect(coolantOf(id).boilingRise).toBeGreaterThan(coolantOf(before).boilingRise)
    expect(coolantViscosity(id, 20)).toBeGreaterThan(coolantViscosity(before, 20))
  }
})
