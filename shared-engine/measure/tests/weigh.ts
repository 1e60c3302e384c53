import { output, type GuidedTest } from '../kind.ts'

/**
 * Mass and where it sits: F + R, and the moment about the rear bar.
 *
 * *Source:* balance of forces and moments.
 */
export const weigh: GuidedTest = {
  id: 'weigh',
  outputs: (bench) => {
    const front = bench.mean('frontKg')
    const rear = bench.mean('rearKg')
    const span = bench.mean('spanMm')
    const bar = bench.plain('rearAheadMm')
    return {
      mass: output(front + rear, 'F + R', { F: front, R: rear }),
      ahead: output((front * span) / (front + rear) + bar, 'F * L / (F + R) + x_bar', {
        F: front,
        R: rear,
        L: span,
        x_bar: bar,
      }),
    }
  },
}
