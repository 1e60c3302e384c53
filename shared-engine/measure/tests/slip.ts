import { output, type GuidedTest } from '../kind.ts'
import { kilo } from '../../units/factors.ts'

/**
 * Slip by tape and turns: 1 − way/(turns · teeth · pitch).
 *
 * *Source:* definition of slip against the belt's advance.
 */
export const slip: GuidedTest = {
  id: 'slip',
  outputs: (bench) => {
    const put = {
      d: bench.mean('metres'),
      n: bench.mean('turns'),
      z: bench.entry('track.sprocketTeeth'),
      p: bench.entry('track.pitchMm'),
    }
    return {
      slip: output(
        100 * (1 - (put.d * kilo) / (put.n * put.z * put.p)),
        '100 * (1 - 1000 * d / (n * z * p))',
        put,
      ),
    }
  },
}
