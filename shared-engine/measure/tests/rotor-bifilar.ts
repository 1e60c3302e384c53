import { output, type GuidedTest } from '../kind.ts'
import { gravity } from '../../constants.ts'

/**
 * Rotor inertia on two threads: J = m g d² T²/(16 π² L), T the time of one swing.
 *
 * *Source:* M. R. Jardin and E. R. Mueller, AIAA 2007-6822.
 */
export const rotorBifilar: GuidedTest = {
  id: 'rotor-bifilar',
  outputs: (bench) => {
    const put = {
      m: bench.mean('rotorG'),
      g: gravity,
      d: bench.mean('apartMm'),
      s: bench.mean('seconds'),
      n: bench.plain('swings'),
      L: bench.mean('wireMm'),
    }
    // g · (mm² → cm²: 1/100) · m/s² · s²/(mm → m: 1/1000)
    const inertia = (10 * put.m * put.g * put.d ** 2 * (put.s / put.n) ** 2) / (16 * Math.PI ** 2 * put.L)
    return { inertia: output(inertia, '10 * m * g * d^2 * (s / n)^2 / (16 * pi^2 * L)', put) }
  },
}
