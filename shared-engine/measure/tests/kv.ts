import { torqueConstantAt } from '../../motor/constants.ts'
import type { Bench } from '../bench.ts'
import { output, type GuidedTest, type Output } from '../kind.ts'

/** V per rpm of the line to rpm per V at 20 °C: warm magnets are weaker, so a warm motor's constant is brought back. */
export function speedConstantOf(bench: Bench, slope: number): Output {
  const { fluxCoefficient } = bench.machine.motor
  const magnets = bench.plain('magnetCelsius')
  const flux = torqueConstantAt({ torqueConstant: 1, fluxCoefficient }, magnets)
  return output(flux / slope, '(1 + alpha_m * (T_mag - 20)) / b', {
    alpha_m: fluxCoefficient,
    T_mag: magnets,
    b: slope,
  })
}

/**
 * Speed constant from the free run: V − I R = a + rpm/Kv.
 *
 * *Source:* back EMF of the first-order motor: Drela, First-Order DC Electric Motor Model, MIT, public notes.
 */
export const kv: GuidedTest = {
  id: 'kv',
  axes: ['rpm', 'Volts less I R, V'],
  line: (bench) => {
    const resistance = bench.has('amps') ? bench.machine.motor.resistance : 0
    const amps = bench.column('amps')
    return {
      x: bench.column('rpm'),
      y: bench.column('volts').map((volts, row) => volts - (amps[row] ?? 0) * resistance),
    }
  },
  outputs: (bench, [a = NaN, b = NaN]) => ({
    kv: speedConstantOf(bench, b),
    offsetVolts: output(a, 'a', { a }),
  }),
}
