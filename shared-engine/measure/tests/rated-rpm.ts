import { output, type GuidedTest } from '../kind.ts'

/**
 * Rated rpm from the most volts of a label.
 *
 * *Source:* common practice, no source.
 */
export const ratedRpm: GuidedTest = {
  id: 'rated-rpm',
  origin: 'stated',
  outputs: (bench) => {
    const put = { U: bench.mean('labelVolts'), K_v: bench.entry('motor.kvRpmPerVolt') }
    return { rated: output(put.U * put.K_v, 'U * K_v', put) }
  },
}
