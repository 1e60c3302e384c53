import { expect, it } from 'vitest'
import { magnetCoefficient } from '../../shared-engine/reference/magnets.ts'

// A pin: the range is as remembered as the table's value.

/**
 * *Source:* IEC 60404-8-1, typical temperature coefficients of remanence from 20 to 100 °C, percent per kelvin: sintered
 * neodymium −0.10 to −0.12, samarium-cobalt −0.03 to −0.05, hard ferrite −0.2. From memory.
 */
it.each([
  ['ndfeb', -0.12, -0.1],
  ['smco', -0.05, -0.03],
  ['ferrite', -0.2, -0.18],
] as const)('%s: between %d and %d %%/K', (id, lowest, highest) => {
  // 1e-12: percent to a fraction.
  expect(100 * magnetCoefficient(id)).toBeGreaterThanOrEqual(lowest - 1e-12)
  expect(100 * magnetCoefficient(id)).toBeLessThanOrEqual(highest + 1e-12)
})
