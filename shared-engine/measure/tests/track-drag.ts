import { noLoadAmpsAt } from '../../motor/drive-line.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import { output, type GuidedTest } from '../kind.ts'
import { motorLineOf } from './motor-line.ts'

/**
 * Internal drag of the loops, run off the ground: M K_t (I − I_0) G η/r = a + b v_b.
 *
 * *Source:* first-order motor, Drela; torque through the reductions over the sprocket's radius.
 */
export const trackDrag: GuidedTest = {
  id: 'track-drag',
  axes: ['Belt speed, m/s', 'Force at the track, N'],
  line: (bench) => {
    const { motor, train, track } = bench.machine
    const line = motorLineOf(bench)
    const ratio = bench.knows('ratio') ? bench.plain('ratio') : train.ratio
    const efficiency = bench.knows('efficiencyPercent')
      ? bench.plain('efficiencyPercent') / 100
      : train.efficiency
    const speeds = bench.column('rpm').map(angularSpeedOf)
    const amps = bench.column('amps')
    const pull = (motor.count * line.torqueConstant * ratio * efficiency) / track.radius
    return {
      x: speeds.map((speed) => (speed / ratio) * track.radius),
      y: speeds.map((speed, row) => pull * ((amps[row] ?? NaN) - noLoadAmpsAt(line, speed))),
    }
  },
  outputs: (_, [a = NaN, b = NaN]) => ({
    constant: output(a, 'a', { a }),
    perSpeed: output(b, 'b', { b }),
  }),
}
