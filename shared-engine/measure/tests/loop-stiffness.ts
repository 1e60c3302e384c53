import { gravity } from '../../constants.ts'
import { output, type GuidedTest } from '../kind.ts'

/**
 * Stiffness of the loop by hung weights: S = g a/(b · strands), length = a + b kg.
 *
 * *Source:* Hooke, T = S ΔL/L_0.
 */
export const loopStiffness: GuidedTest = {
  id: 'loop-stiffness',
  axes: ['kg', 'lengthMm'],
  line: (bench) => ({ x: bench.column('kg'), y: bench.column('lengthMm') }),
  outputs: (bench, [a = NaN, b = NaN]) => {
    const strands = bench.plain('strands')
    return {
      stiffness: output((gravity * a) / (b * strands), 'g * a / (b * n)', { g: gravity, a, b, n: strands }),
      slackMm: output(a, 'a', { a }),
    }
  },
}
