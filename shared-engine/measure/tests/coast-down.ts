import { gravity } from '../../constants.ts'
import { linearFit } from '../../numeric/linear-fit.ts'
import { equivalentMassOf } from '../../vehicle/inertia.ts'
import type { Bench } from '../bench.ts'
import { output, type GuidedTest, type Outputs } from '../kind.ts'
import { massOf, rollingOf } from './rolling.ts'
import { integralsOf, startColumns } from './runs.ts'

const hasBothWays = (bench: Bench) => {
  const directions = bench.column('direction')
  return directions.includes(1) && directions.includes(-1)
}

/** m_e: as given, or the build's. */
const equivalentMass = (bench: Bench) =>
  bench.knows('equivalentMassKg') ? bench.plain('equivalentMassKg') : equivalentMassOf(bench.machine)

function outputsOf(bench: Bench, coefficients: readonly number[]): Outputs {
  const both = hasBothWays(bench)
  const [a = NaN, c = NaN, s = NaN] = coefficients.slice(both ? -3 : -2)
  const m_e = equivalentMass(bench)
  const m = massOf(bench)
  const idle = bench.plain('idleN')
  const area = bench.entry('vehicle.frontalAreaM2')
  const rho = bench.machine.ground.airDensity
  return {
    rolling: rollingOf(bench, (m_e * a - idle) / (m * gravity), '(m_e * a - F_idle) / (m * g)', {
      m_e,
      a,
      F_idle: idle,
      m,
      g: gravity,
    }),
    ...(area > 0
      ? { drag: output((2 * m_e * c) / (rho * area), '2 * m_e * c / (rho * A)', { m_e, c, rho, A: area }) }
      : {}),
    constantN: output(m_e * a, 'm_e * a', { m_e, a }),
    squareNs2PerM2: output(m_e * c, 'm_e * c', { m_e, c }),
    ...(both
      ? {
          grade: output((100 * s * m_e) / (m * gravity), '100 * s * m_e / (m * g)', {
            s,
            m_e,
            m,
            g: gravity,
          }),
        }
      : {}),
  }
}

/**
 * Rolling resistance and air drag by coasting: v = v_0 − a t − c ∫v² dt − s · direction · t, integrated, never
 * differentiated; one start for each run, the slope s where it was coasted both ways.
 *
 * *Source:* R. A. White and H. H. Korst, SAE 720099; G. D. Thompson, The Vehicle Road Load Problem, US EPA.
 */
export const coastDown: GuidedTest = {
  id: 'coast-down',
  axes: ['seconds', 'metresPerSecond'],
  fit: (bench) => {
    const v = bench.column('metresPerSecond')
    const time = integralsOf(
      bench,
      v.map(() => 1),
    )
    const squares = integralsOf(
      bench,
      v.map((speed) => speed * speed),
    )
    const direction = bench.column('direction')
    const slope = time.map((t, row) => -(direction[row] ?? 0) * t)
    return linearFit(
      [
        ...startColumns(bench),
        time.map((t) => -t),
        squares.map((square) => -square),
        ...(hasBothWays(bench) ? [slope] : []),
      ],
      v,
    )
  },
  outputs: outputsOf,
  remarks: (bench) => (hasBothWays(bench) ? [] : [{ code: 'one-way', about: 'direction', verdict: 'weak' }]),
}
