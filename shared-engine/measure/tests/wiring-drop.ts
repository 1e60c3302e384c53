import { output, type GuidedTest } from '../kind.ts'
import { kilo } from '../../units/factors.ts'

/**
 * Resistance of leads, plugs and joints: slope of the drop along plus and minus over amps.
 *
 * *Source:* Ohm's law.
 */
export const wiringDrop: GuidedTest = {
  id: 'wiring-drop',
  axes: ['amps', 'Volts along plus and minus, V'],
  line: (bench) => {
    const minus = bench.column('minusVolts')
    return {
      x: bench.column('amps'),
      y: bench.column('plusVolts').map((plus, row) => plus + (minus[row] ?? 0)),
    }
  },
  outputs: (_, [, b = NaN]) => ({ wiring: output(kilo * b, '1000 * b', { b }) }),
}
