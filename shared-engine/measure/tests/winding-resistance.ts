import { copperTemperatureCoefficient } from '../../constants.ts'
import { windingResistanceAt } from '../../motor/constants.ts'
import { output, type GuidedTest } from '../kind.ts'
import { kilo } from '../../units/factors.ts'

/**
 * Winding resistance lead to lead, brought to 20 °C: R_20 = b/[1 + α (T − 20)], b the slope of volts over amps.
 *
 * *Source:* resistance method of IEC 60034-1; α of IEC 60028, annealed copper.
 */
export const windingResistance: GuidedTest = {
  id: 'winding-resistance',
  axes: ['amps', 'volts'],
  line: (bench) => ({ x: bench.column('amps'), y: bench.column('volts') }),
  outputs: (bench, [a = NaN, b = NaN]) => {
    const winding = bench.mean('windingCelsius')
    return {
      resistance: output((kilo * b) / windingResistanceAt(1, winding), '1000 * b / (1 + alpha * (T - 20))', {
        b,
        alpha: copperTemperatureCoefficient,
        T: winding,
      }),
      asMeasured: output(kilo * b, '1000 * b', { b }),
      offsetVolts: output(a, 'a', { a }),
    }
  },
}
