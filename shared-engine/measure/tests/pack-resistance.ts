import { cellResistanceFactor } from '../../reference/chemistry.ts'
import { output, type GuidedTest } from '../kind.ts'
import { kilo } from '../../units/factors.ts'

/**
 * Resistance of one cell at 25 °C from the pack's sag: V = a − R I, R shared by the cells once the wiring is taken off.
 *
 * *Source:* direct-current step of IEC 61960-3; the doubling of resistance each 20 K colder: common practice, no source.
 */
export const packResistance: GuidedTest = {
  id: 'pack-resistance',
  axes: ['amps', 'volts'],
  line: (bench) => ({ x: bench.column('amps'), y: bench.column('volts') }),
  outputs: (bench, [a = NaN, b = NaN]) => {
    const series = bench.entry('pack.series')
    const parallel = bench.entry('pack.parallel')
    const wiring = bench.entry('pack.wiringResistanceMilliohm')
    const cold = cellResistanceFactor(bench.mean('packCelsius'))
    return {
      cell: output(((-kilo * b - wiring) * parallel) / series / cold, '(-1000 * b - R_w) * P / S / c_T', {
        b,
        R_w: wiring,
        P: parallel,
        S: series,
        c_T: cold,
      }),
      pack: output(-kilo * b, '-1000 * b', { b }),
      openVolts: output(a, 'a', { a }),
    }
  },
}
