import { expect, it } from 'vitest'
import { coolantOf, coolantViscosity } from '../../shared-engine/reference/coolants.ts'

/**
 * *Source:* water at 25 °C: density after Kell, 997.048 kg/m³; specific heat measured by Osborne, Stimson and Ginnings, 4179
 * J/(kg·K). From memory; neither is where the table's row is from.
 */
it('water is what was measured of it', () => {
  // 1e-4: the table's third digit; 1e-3: what a calorimeter of 1939 and today's formulation differ by
  expect(Math.abs(coolantOf('water').density / 997.048 - 1)).toBeLessThan(1e-4)
  expect(Math.abs(coolantOf('water').specificHeat / 4179 - 1)).toBeLessThan(1e-3)
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
