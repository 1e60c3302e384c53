import { describe, expect, it } from 'vitest'
import { openCircuitVolts } from '../../shared-engine/reference/chemistry.ts'

/**
 * Three 4.35 V polymer cells at 25 °C: percent of charge, resting volts of each.
 *
 * *Source:* open-circuit tables (`ocv-capacity-table-0` of a `simple-battery`) in open-source kernel device trees.
 */
const highVoltagePolymer = [
  [5, 3.641, 3.639, 3.658],
  [10, 3.68, 3.689, 3.687],
  [20, 3.729, 3.736, 3.75],
  [30, 3.767, 3.77, 3.774],
  [40, 3.798, 3.8, 3.795],
  [50, 3.839, 3.84, 3.836],
  [60, 3.919, 3.914, 3.91],
  [70, 4.001, 3.992, 3.991],
  [80, 4.1, 4.102, 4.081],
  [90, 4.208, 4.208, 4.189],
  [95, 4.265, 4.266, 4.249],
  [100, 4.33, 4.328, 4.33],
] as const

describe('4.35 V lithium polymer', () => {
  it.each(highVoltagePolymer)('at %d %%', (percent, ...cells) => {
    const mean = cells.reduce((sum, volts) => sum + volts, 0) / cells.length
    // 0.025 V: cells of one chemistry differ by some 0.02 V, and the table keeps 4.35 V, as a cell leaves its charger.
    expect(Math.abs(openCircuitVolts('lihv', percent / 100) - mean)).toBeLessThan(0.025)
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
