import { output, type GuidedTest } from '../kind.ts'

/**
 * Friction of skis pulled by themselves: pull over weight.
 *
 * *Source:* definition of the coefficient.
 */
export const skiFriction: GuidedTest = {
  id: 'ski-friction',
  outputs: (bench) => {
    const pull = bench.mean('pullKg')
    const skis = bench.mean('skiKg')
    return { ski: output(pull / skis, 'F / m_s', { F: pull, m_s: skis }) }
  },
}
