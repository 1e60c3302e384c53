import { gravity } from '../../constants.ts'
import { output, type GuidedTest } from '../kind.ts'
import { kilo } from '../../units/factors.ts'

/**
 * Tension that breaks the next loop, and the belt speed at which its own mass would: T = g kg lever/strands,
 * √((T − N_0)/m′).
 *
 * *Source:* load per strand; centrifugal tension m′ v²; prediction interval s √(1 + 1/n).
 */
export const loopBreak: GuidedTest = {
  id: 'loop-break',
  ofTheNext: true,
  outputs: (bench) => {
    const put = { g: gravity, m: bench.mean('kg'), lever: bench.plain('lever'), n: bench.plain('strands') }
    const formula = 'g * m * lever / n'
    const tension = (put.g * put.m * put.lever) / put.n
    const grams = bench.entry('track.massGPerM')
    const N_0 = bench.entry('track.pretensionN')
    const both = bench.knows('track.massGPerM') && bench.knows('track.pretensionN')
    return {
      tension: output(tension, formula, put),
      ...(both
        ? {
            burstMps: output(
              Math.sqrt((tension - N_0) / (grams / kilo)),
              `sqrt((${formula} - N_0) / (q / 1000))`,
              { ...put, N_0, q: grams },
            ),
          }
        : {}),
    }
  },
}
