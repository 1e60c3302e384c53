import { copperTemperatureCoefficient } from '../../constants.ts'
import { referenceTemperature } from '../../motor/constants.ts'
import { leastSquares } from '../../numeric/least-squares.ts'
import { lineFit, sumOfSquares, type Fitted } from '../../numeric/linear-fit.ts'
import type { Bench } from '../bench.ts'
import { output, type GuidedTest, type Outputs } from '../kind.ts'

/** T∞, B, τ to begin with: of a spread of time constants, the one whose line fits best. */
function startOf(seconds: readonly number[], celsius: readonly number[]): readonly [number, number, number] {
  const first = seconds[0] ?? 0
  const span = (seconds.at(-1) ?? 0) - first
  let best: readonly [number, number, number] = [celsius.at(-1) ?? 0, -1, span]
  let least = Infinity
  for (let tau = span / 50; tau < 50 * span; tau *= 1.3) {
    const fit = lineFit(
      seconds.map((t) => Math.exp(-(t - first) / tau)),
      celsius,
    )
    const left = sumOfSquares(fit.residuals)
    if (left < least) {
      least = left
      best = [fit.coefficients[0] ?? 0, fit.coefficients[1] ?? 0, tau]
    }
  }
  return best
}

/** Least squares of T = T∞ + B e^(−t/τ), t from the first row. */
function fitOf(bench: Bench): Fitted {
  const seconds = bench.column('seconds')
  const celsius = bench.column('celsius')
  const first = seconds[0] ?? 0
  const start = startOf(seconds, celsius)
  const fit = leastSquares(
    ([steady = NaN, below = NaN, tau = NaN]) =>
      seconds.map((t, row) => steady + below * Math.exp(-(t - first) / tau) - (celsius[row] ?? NaN)),
    start.map((value) => (value === 0 ? 1e-6 : value)),
    20,
  )
  const settled = fit.lastStep < 1e-7
  const residuals = fit.residuals.map((residual) => -residual)
  return { ...fit, residuals, coefficients: settled ? fit.coefficients : fit.coefficients.map(() => NaN) }
}

function outputsOf(bench: Bench, [steady = NaN, , tau = NaN]: readonly number[]): Outputs {
  const put = {
    T: steady,
    T_s: bench.mean('sinkCelsius'),
    P: bench.plain('ironWatts'),
    I: bench.mean('amps'),
    R: bench.machine.motor.resistance,
    alpha: copperTemperatureCoefficient,
  }
  const cold = put.I * put.I * put.R
  const heat = put.P + cold * (1 + put.alpha * (steady - referenceTemperature))
  const resistance = (steady - put.T_s) / heat
  const formula = '(T - T_s) / (P + I^2 * R * (1 + alpha * (T - 20)))'
  return {
    resistance: output(resistance, formula, put),
    capacity: output(
      tau * (1 / resistance - cold * put.alpha),
      `tau * (1 / (${formula}) - I^2 * R * alpha)`,
      {
        ...put,
        tau,
      },
    ),
    steadyCelsius: output(steady, 'T', { T: steady }),
    tauSeconds: output(tau, 'tau', { tau }),
  }
}

/**
 * Thermal resistance and heat capacity by warming up under a held current: T = T∞ + B e^(−t/τ).
 *
 * R_th = (T∞ − T_s)/(P_fe + j [1 + α (T∞ − 20)]), j = I² R_20;  C = τ (1/R_th − j α).
 *
 * *Source:* heat balance of one lump, C dT/dt = P_fe + j [1 + α (T − 20)] − (T − T_s)/R_th, solved.
 */
export const warmUp: GuidedTest = {
  id: 'warm-up',
  axes: ['seconds', 'celsius'],
  fit: fitOf,
  outputs: outputsOf,
  remarks: (bench, { tauSeconds = NaN }) => {
    const seconds = bench.column('seconds')
    const span = (seconds.at(-1) ?? 0) - (seconds[0] ?? 0)
    if (tauSeconds > span / 0.7) return [{ code: 'too-short', about: 'seconds', verdict: 'retake' }]
    if (tauSeconds > span / 1.5) return [{ code: 'too-short', about: 'seconds', verdict: 'weak' }]
    return []
  },
}
