import { output, type GuidedTest } from '../kind.ts'
import { speedConstantOf } from './kv.ts'

/** Part of a sine's peak that six-step drive sees on average, and that a sine drive sees. */
const shareOfPeak = (drive: string) => (drive === 'sine' ? 1 : 3 / Math.PI)

/**
 * Speed constant by spinning the shaft from outside: √2 V_rms q = a + rpm/Kv, q = 3/π for six-step drive.
 *
 * *Source:* average of a rectified three-phase sine over a sixth of a turn, 3√2/π of its rms, any text on rectifiers.
 */
export const kvSpin: GuidedTest = {
  id: 'kv-spin',
  axes: ['rpm', 'Peak volts, V'],
  line: (bench) => {
    const factor = Math.SQRT2 * shareOfPeak(bench.word('drive'))
    return { x: bench.column('rpm'), y: bench.column('acVolts').map((volts) => volts * factor) }
  },
  outputs: (bench, [a = NaN, b = NaN]) => ({
    kv: speedConstantOf(bench, b),
    offsetVolts: output(a, 'a', { a }),
  }),
}
