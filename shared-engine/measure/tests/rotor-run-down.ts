import { noLoadAmpsAt } from '../../motor/drive-line.ts'
import { linearFit } from '../../numeric/linear-fit.ts'
import { fromEngine } from '../../units/convert.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import { output, type GuidedTest } from '../kind.ts'
import { motorLineOf } from './motor-line.ts'
import { integralsOf, startColumns } from './runs.ts'

/**
 * Rotor inertia by running down: ω = ω_0 − (1/J) ∫K_t I_0(ω) dt, one start for each run.
 *
 * *Source:* J dω/dt = −K_t I_0(ω), integrated: the retardation method of IEC 60034-2-1.
 */
export const rotorRunDown: GuidedTest = {
  id: 'rotor-run-down',
  fit: (bench) => {
    const line = motorLineOf(bench)
    const speeds = bench.column('rpm').map(angularSpeedOf)
    const drag = speeds.map((speed) => line.torqueConstant * noLoadAmpsAt(line, speed))
    const lost = integralsOf(bench, drag).map((impulse) => -impulse)
    return linearFit([...startColumns(bench), lost], speeds)
  },
  outputs: (bench, coefficients) => {
    const perInertia = coefficients.at(-1) ?? NaN
    const added = bench.plain('addedGcm2')
    const inertia = fromEngine(1 / perInertia, 'inertia')
    return { inertia: output(inertia - added, '1e7 / k - J_a', { k: perInertia, J_a: added }) }
  },
}
