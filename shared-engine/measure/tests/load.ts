import { output, type GuidedTest } from '../kind.ts'

/**
 * Weight of what the machine carries.
 *
 * *Source:* reading of a scale.
 */
export const load: GuidedTest = {
  id: 'load',
  outputs: (bench) => {
    const weight = bench.mean('kg')
    return { load: output(weight, 'W', { W: weight }) }
  },
}
