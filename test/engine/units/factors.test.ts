import { expect, test } from 'vitest'
import { fromEngine, toEngine } from '../../../shared-engine/units/convert.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'

/**
 * NIST Special Publication 811, 2008 edition, appendix B.8, "factors for units listed alphabetically", as printed there
 * (values written from memory). The last column is half a unit of the last printed digit; bold, exact factors carry 0.
 */
const printed: readonly (readonly [kind: QuantityKind, unit: string, factor: number, half: number])[] = [
  ['length', 'in', 2.54e-2, 0],
  ['length', 'ft', 3.048e-1, 0],
  ['length', 'mil', 2.54e-5, 0],
  ['distance', 'mi', 1.609344e3, 0],
  ['area', 'ft²', 9.290304e-2, 0],
  ['area', 'in²', 6.4516e-4, 0],
  ['speed', 'mph', 4.4704e-1, 0],
  ['speed', 'km/h', 2.777778e-1, 5e-8],
  ['speed', 'ft/s', 3.048e-1, 0],
  ['acceleration', 'g', 9.80665, 0],
  ['acceleration', 'ft/s²', 3.048e-1, 0],
  ['mass', 'lb', 4.535924e-1, 5e-8],
  ['mass', 'oz', 2.834952e-2, 5e-9],
  ['linearDensity', 'lb/ft', 1.488164, 5e-7],
  ['density', 'lb/ft³', 1.601846e1, 5e-6],
  ['inertia', 'lb·in²', 2.926397e-4, 5e-11],
  ['force', 'lbf', 4.448222, 5e-7],
  ['force', 'kgf', 9.80665, 0],
  ['force', 'ozf', 2.780139e-1, 5e-8],
  ['torque', 'lbf·ft', 1.355818, 5e-7],
  ['torque', 'lbf·in', 1.129848e-1, 5e-8],
  ['torque', 'ozf·in', 7.061552e-3, 5e-10],
  ['stress', 'psi', 6.894757e3, 5e-4],
  ['stress', 'ksi', 6.894757e6, 5e-1],
  ['pressure', 'bar', 1e5, 0],
  ['stiffness', 'lbf/in', 1.751268e2, 5e-5],
  ['watts', 'hp', 7.456999e2, 5e-5],
  ['watts', 'PS', 7.354988e2, 5e-5],
  ['energy', 'Wh', 3.6e3, 0],
  ['charge', 'Ah', 3.6e3, 0],
  ['flow', 'gal/min', 6.30902e-5, 5e-11],
  ['flow', 'L/min', 1.666667e-5, 5e-12],
  ['angle', '°', 1.745329e-2, 5e-9],
  ['angularSpeed', 'rpm', 1.047198e-1, 5e-8],
]

test.each(printed)('1 %s in %s is the factor that NIST SP 811 prints', (kind, unit, factor, half) => {
  // 1e-15: an exact factor may differ by the last bit of one division.
  expect(Math.abs(toEngine(1, kind, unit) - factor)).toBeLessThanOrEqual(half + 1e-15 * factor)
})

test('temperatures, NIST SP 811 (2008) appendix B.8: t/°C = (t/°F − 32)/1.8 and t/°C = T/K − 273.15', () => {
  expect(toEngine(32, 'temperature', '°F')).toBe(0)
  expect(toEngine(212, 'temperature', '°F')).toBe(100)
  expect(toEngine(-40, 'temperature', '°F')).toBe(-40)
  expect(toEngine(273.15, 'temperature', 'K')).toBe(0)
  expect(fromEngine(100, 'temperature', '°F')).toBe(212)
})

test('fractions of an inch become the millimetres that drawings print', () => {
  // International inch, 25.4 mm exactly (1959 agreement): binary fractions have exact decimals.
  expect(toEngine(3 / 8, 'length', 'in')).toBe(0.009525)
  expect(toEngine(1 / 2, 'length', 'in')).toBe(0.0127)
  expect(toEngine(5 / 16, 'length', 'in')).toBe(0.0079375)
  expect(toEngine(25.4, 'length', 'mm')).toBe(0.0254)
})
