import { output, type GuidedTest } from '../kind.ts'

/** Place of the largest number, the first of equal ones. */
const placeOfMost = (values: readonly number[]) => values.indexOf(Math.max(...values))

/**
 * Free-run current at the most volts, and the share of it that grows with speed: I = a + b rpm.
 *
 * *Source:* no-load loss with a constant and a viscous part, after Drela, First-Order DC Electric Motor Model.
 */
export const freeRun: GuidedTest = {
  id: 'free-run',
  axes: ['rpm', 'amps'],
  choose: (bench) => [placeOfMost(bench.column('volts'))],
  line: (bench) => ({ x: bench.column('rpm'), y: bench.column('amps') }),
  outputs: (bench, [a = NaN, b = NaN], [most = 0]) => {
    const rpm = bench.column('rpm')[most] ?? NaN
    const volts = bench.column('volts')[most] ?? NaN
    const amps = a + b * rpm
    return {
      noLoadAmps: output(amps, 'a + b * rpm', { a, b, rpm }),
      noLoadVolts: output(volts, 'V', { V: volts }),
      viscous: output((100 * b * rpm) / amps, '100 * b * rpm / (a + b * rpm)', { a, b, rpm }),
    }
  },
}
