import { output, type GuidedTest } from '../kind.ts'
import { secondsPerMinute } from '../../units/factors.ts'

/**
 * Coolant flow by the bucket: 60 kg/(ρ s), l/min.
 *
 * *Source:* gravimetric method of ISO 4185.
 */
export const flow: GuidedTest = {
  id: 'flow',
  outputs: (bench) => {
    const put = { m: bench.mean('kg'), rho: bench.plain('densityKgPerL'), s: bench.mean('seconds') }
    return { flow: output((secondsPerMinute * put.m) / put.rho / put.s, '60 * m / rho / s', put) }
  },
}
