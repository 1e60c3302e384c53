import { output, type GuidedTest } from '../kind.ts'
import { massOf, onTrackOf } from './rolling.ts'

/**
 * Sideways friction by turning the machine about its middle: μ_t = 4 F arm/(W_t L).
 *
 * *Source:* moment of uniform pressure, μ W L/4: Wong, Theory of Ground Vehicles, skid steering.
 */
export const turnFriction: GuidedTest = {
  id: 'turn-friction',
  outputs: (bench) => {
    const pull = bench.mean('pullKg')
    const arm = bench.mean('armMm')
    const m = massOf(bench)
    const o = onTrackOf(bench)
    const L = bench.entry('vehicle.contactLengthMm')
    return {
      turn: output((4 * pull * arm) / (m * o * L), '4 * F * arm / (m * o * L)', { F: pull, arm, m, o, L }),
    }
  },
}
