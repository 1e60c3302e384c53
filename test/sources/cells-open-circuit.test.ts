import { describe, expect, it } from 'vitest'
import { openCircuitVolts } from '../../shared-engine/reference/chemistry.ts'

// None of these cells had a part in the table.

/**
 * A lithium polymer cell that charges to 4.40 V, at 25 °C: percent of charge, resting volts, as far as the higher end of its
 * charge has no say.
 *
 * *Source:* open-circuit table (`ocv-capacity-table-0` of a `simple-battery`) in an open-source kernel device tree.
 */
const higherVoltagePolymer = [
  [5, 3.643],
  [10, 3.684],
  [20, 3.734],
  [30, 3.77],
  [40, 3.804],
  [50, 3.85],
  [60, 3.93],
] as const

describe('lithium polymer of 4.35 V and more', () => {
  it.each(higherVoltagePolymer)('at %d %%: %d V', (percent, volts) => {
    // 0.03 V: cells of one chemistry differ by some 0.02 V
    expect(Math.abs(openCircuitVolts('lihv', percent / 100) - volts)).toBeLessThan(0.03)
  })
})

/**
 * A lithium cell at 20 °C: percent of charge, resting volts. Its charge ends at 4.185 V.
 *
 * *Source:* example of the open-source kernel's binding of a fuel gauge, `ocv-capacity-table-0` of a `simple-battery`.
 */
const polymer = [
  [5, 3.605],
  [10, 3.68],
  [15, 3.724],
  [20, 3.752],
  [30, 3.77],
  [40, 3.777],
  [50, 3.805],
  [60, 3.864],
  [70, 3.917],
  [80, 3.983],
  [90, 4.066],
  [100, 4.185],
] as const

describe('4.20 V lithium polymer', () => {
  it.each(polymer)('at %d %%: %d V', (percent, volts) => {
    // 0.05 V: one cell beside a chart of many, ± 0.03 V, and 0.015 V for a charge that ends earlier. It tells the
    // chemistries apart: the others are 0.1 V away at 10 or at 90 %.
    expect(Math.abs(openCircuitVolts('lipo', percent / 100) - volts)).toBeLessThan(0.05)
  })

  it('which no other chemistry would pass', () => {
    for (const other of ['lihv', 'liion', 'lifepo4'] as const) {
      const off = polymer.map(([percent, volts]) => Math.abs(openCircuitVolts(other, percent / 100) - volts))
      expect(Math.max(...off)).toBeGreaterThan(0.1)
    }
  })
})

/**
 * A 1.2 Ah lithium iron phosphate cell discharged in 32 h, and an 11-point rest table of another.
 *
 * *Source:* data set to Sunil, Pattipati and Balasingam, Piecewise Linear Approximation of Battery Open-Circuit Voltage
 * Characteristics Using Dynamic Programming, IEEE Trans. Instrumentation and Measurement, 2025; an open firmware.
 */
const ironPhosphate = [
  [10, 3.2, 3.12],
  [20, 3.24, 3.2],
  [50, 3.3, 3.26],
  [90, 3.34, 3.35],
] as const

describe('lithium iron phosphate', () => {
  it.each(ironPhosphate)('at %d %% lies between or within 0.03 V of two others', (percent, one, other) => {
    const volts = openCircuitVolts('lifepo4', percent / 100)
    // 0.03 V: what two cells of the chemistry differ by on their plateau.
    expect(volts).toBeGreaterThan(Math.min(one, other) - 0.03)
    expect(volts).toBeLessThan(Math.max(one, other) + 0.03)
  })
})
