import { output, type GuidedTest } from '../kind.ts'
import { massOf, rollingOf } from './rolling.ts'

/**
 * Rolling resistance by pulling both ways: f = [½ (out + back) − idle]/m.
 *
 * *Source:* force balance; the mean of both directions takes the slope out, as in SAE J1263.
 */
export const rollingPull: GuidedTest = {
  id: 'rolling-pull',
  outputs: (bench) => {
    const out = bench.mean('outKg')
    const back = bench.mean('backKg')
    const idle = bench.has('idleKg') ? bench.mean('idleKg') : 0
    const m = massOf(bench)
    return {
      rolling: rollingOf(bench, ((out + back) / 2 - idle) / m, '((F_out + F_back) / 2 - F_idle) / m', {
        F_out: out,
        F_back: back,
        F_idle: idle,
        m,
      }),
      grade: output((100 * (out - back)) / (2 * m), '100 * (F_out - F_back) / (2 * m)', {
        F_out: out,
        F_back: back,
        m,
      }),
    }
  },
}
