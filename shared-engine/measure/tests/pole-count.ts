import type { Bench } from '../bench.ts'
import { output, type GuidedTest } from '../kind.ts'

const ratiosOf = (bench: Bench) => {
  const rpm = bench.column('rpm')
  return bench.column('electricalRpm').map((electrical, row) => electrical / (rpm[row] ?? NaN))
}

/** To the nearest whole number; halves to the even one (ISO 80000-1, annex B, rule A). */
function rounded(value: number): number {
  const down = Math.floor(value)
  const part = value - down
  if (part === 0.5) return down % 2 === 0 ? down : down + 1
  return part < 0.5 ? down : down + 1
}

/**
 * Magnet poles: electrical over mechanical rpm is the number of pairs.
 *
 * *Source:* one electrical turn for each pair of poles.
 */
export const poleCount: GuidedTest = {
  id: 'pole-count',
  exact: ['poles'],
  repeats: { of: 'pairs', values: ratiosOf },
  outputs: (bench) => {
    const ratios = ratiosOf(bench)
    const pairs = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length
    return {
      poles: output(2 * rounded(pairs), '2 * n', { n: rounded(pairs) }),
      pairs: output(pairs, 'pairs', { pairs }),
    }
  },
  remarks: (_, { pairs = NaN }) =>
    Math.abs(pairs - rounded(pairs)) > 0.1 ? [{ code: 'not-whole', about: 'pairs', verdict: 'retake' }] : [],
}
