import { output, type GuidedTest } from '../kind.ts'
import { kilo } from '../../units/factors.ts'

/**
 * Pretension by the note of a span: T = 4 m′ L² f².
 *
 * *Source:* f = (1/2L) √(T/m′), Mersenne.
 */
export const spanFrequency: GuidedTest = {
  id: 'span-frequency',
  outputs: (bench) => {
    const hertz = bench.mean('hertz')
    const span = bench.mean('spanMm')
    const grams = bench.entry('track.massGPerM')
    return {
      tension: output(
        4 * (grams / kilo) * (span / kilo) ** 2 * hertz ** 2,
        '4 * q / 1000 * (L / 1000)^2 * f^2',
        { q: grams, L: span, f: hertz },
      ),
    }
  },
}
