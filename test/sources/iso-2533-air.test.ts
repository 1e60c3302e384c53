import { expect, it } from 'vitest'
import { airDensityOf } from '../../shared-engine/machine/ground.ts'

/**
 * *Source:* ISO 2533:1975, Standard Atmosphere, table by geopotential altitude: metres, K, kg/m³. Written from memory.
 * The standard's air is 15 °C at sea level and 6.5 K colder for each kilometre.
 */
const rows = [
  [0, 288.15, 1.225],
  [1000, 281.65, 1.11164],
  [2000, 275.15, 1.00649],
  [3000, 268.65, 0.909122],
  [4000, 262.15, 0.819129],
  [5000, 255.65, 0.736116],
  [6000, 249.15, 0.659697],
  [7000, 242.65, 0.589501],
  [8000, 236.15, 0.525168],
  [9000, 229.65, 0.466348],
] as const

it.each(rows)('air at %d m and %d K weighs %d kg/m³', (altitude, kelvin, density) => {
  // 2e-5: the table's sixth digit, and the handbook form's constants, which are rounded to six.
  expect(Math.abs(airDensityOf(altitude, kelvin - 273.15) / density - 1)).toBeLessThan(2e-5)
})
