import { output, type GuidedTest } from '../kind.ts'

/**
 * Share of the weight that is on the tracks.
 *
 * *Source:* sum of supports.
 */
export const weightShare: GuidedTest = {
  id: 'weight-share',
  outputs: (bench) => {
    const track = bench.mean('trackKg')
    const rest = bench.mean('restKg')
    return {
      share: output((100 * track) / (track + rest), '100 * K / (K + N)', { K: track, N: rest }),
    }
  },
}
