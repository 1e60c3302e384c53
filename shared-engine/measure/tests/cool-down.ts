import type { Bench } from '../bench.ts'
import { output, type GuidedTest } from '../kind.ts'

/** Degrees above the sink, row by row. */
const risesOf = (bench: Bench) => {
  const sink = bench.mean('sinkCelsius')
  return bench.column('celsius').map((celsius) => celsius - sink)
}

/**
 * Heat capacity by cooling down: ln(T − T_s) falls straight with 1/τ, C = τ/R_th. Rows below a fifth of the first rise
 * are left out: there the thermometer's error decides.
 *
 * *Source:* Newton's law of cooling.
 */
export const coolDown: GuidedTest = {
  id: 'cool-down',
  axes: ['seconds', 'ln of the rise'],
  choose: (bench) => {
    const rises = risesOf(bench)
    const first = rises[0] ?? NaN
    // A first row at the sink's temperature leaves nothing to choose: all rows stay, and no logarithm of them exists.
    if (!(first > 0)) return rises.map((_, row) => row)
    return rises.flatMap((rise, row) => (rise >= first / 5 ? [row] : []))
  },
  line: (bench, chosen) => {
    const rises = risesOf(bench)
    const seconds = bench.column('seconds')
    return {
      x: chosen.map((row) => seconds[row] ?? NaN),
      y: chosen.map((row) => Math.log(rises[row] ?? NaN)),
    }
  },
  outputs: (bench, [, b = NaN]) => {
    const resistance = bench.entry('motor.thermalResistanceKPerW')
    const tau = -1 / b
    return {
      capacity: output(tau / resistance, '-1 / b / R_th', { b, R_th: resistance }),
      tauSeconds: output(tau, '-1 / b', { b }),
    }
  },
  remarks: (bench, _, chosen) => (chosen.length < bench.rows ? [{ code: 'left-out', about: 'celsius' }] : []),
}
