import { output, type GuidedTest } from '../kind.ts'

/**
 * What a radiator takes away for each kelvin between coolant and air: W = ρ V̇ c (in − out), over the mean excess.
 *
 * *Source:* heat carried by a flow; the coolant's temperature taken as the mean of inlet and outlet [assumption].
 */
export const radiator: GuidedTest = {
  id: 'radiator',
  outputs: (bench) => {
    const cooling = bench.machine.cooling
    const put = {
      rho: cooling?.density ?? NaN,
      Q: cooling?.flow ?? NaN,
      c: cooling?.specificHeat ?? NaN,
      T_in: bench.mean('inCelsius'),
      T_out: bench.mean('outCelsius'),
      T_air: bench.mean('airCelsius'),
    }
    const watts = put.rho * put.Q * put.c * (put.T_in - put.T_out)
    const formula = 'rho * Q * c * (T_in - T_out)'
    return {
      radiator: output(
        watts / ((put.T_in + put.T_out) / 2 - put.T_air),
        `${formula} / ((T_in + T_out) / 2 - T_air)`,
        put,
      ),
      watts: output(watts, formula, put),
    }
  },
}
