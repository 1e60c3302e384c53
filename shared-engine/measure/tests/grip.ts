import { output, type GuidedTest } from '../kind.ts'
import { massOf, onTrackOf } from './rolling.ts'

/**
 * Grip by pulling to slip: pull over the weight on the tracks.
 *
 * *Source:* definition of the coefficient.
 */
export const grip: GuidedTest = {
  id: 'grip',
  outputs: (bench) => {
    const pull = bench.mean('pullKg')
    const m = massOf(bench)
    const o = onTrackOf(bench)
    return { grip: output(pull / (m * o), 'F / (m * o)', { F: pull, m, o }) }
  },
}
