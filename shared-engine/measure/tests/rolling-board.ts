import type { GuidedTest } from '../kind.ts'
import { tangentOfSine } from './cg-lift.ts'
import { massOf, rollingOf } from './rolling.ts'

/**
 * Rolling resistance on a tilted board: f = tan θ − idle/(m cos θ), sin θ = rise/board.
 *
 * *Source:* tangent of the angle of uniform motion.
 */
export const rollingBoard: GuidedTest = {
  id: 'rolling-board',
  outputs: (bench) => {
    const sine = bench.mean('riseMm') / bench.mean('boardMm')
    const idle = bench.has('idleKg') ? bench.mean('idleKg') : 0
    const m = massOf(bench)
    const whole = tangentOfSine(sine) - idle / (m * Math.sqrt(1 - sine * sine))
    return {
      rolling: rollingOf(bench, whole, 'tan(asin(H / L)) - F_idle / (m * cos(asin(H / L)))', {
        H: bench.mean('riseMm'),
        L: bench.mean('boardMm'),
        F_idle: idle,
        m,
      }),
    }
  },
}
