import { describe, expect, it } from 'vitest'
import { openCircuitVolts } from '../../shared-engine/reference/chemistry.ts'

// A pin: the table's row is the mean of these three cells, so only a slip of the typing would show.

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
