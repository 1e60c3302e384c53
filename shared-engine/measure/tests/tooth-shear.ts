import { gravity } from '../../constants.ts'
import { isMaterialId, materialOf } from '../../reference/materials.ts'
import { fromEngine } from '../../units/convert.ts'
import { output, type GuidedTest, type Outputs } from '../kind.ts'

/**
 * Strength of the next tooth by tearing some off: τ = g kg lever/(teeth · w t), N/mm² being MPa.
 *
 * *Source:* load over the root's area; prediction interval s √(1 + 1/n), any text on statistics.
 */
export const toothShear: GuidedTest = {
  id: 'tooth-shear',
  ofTheNext: true,
  outputs: (bench): Outputs => {
    const put = {
      g: gravity,
      m: bench.mean('kg'),
      lever: bench.plain('lever'),
      n: bench.plain('teethLoaded'),
      w: bench.entry('track.tooth.widthMm'),
      t: bench.entry('track.tooth.rootMm'),
    }
    const formula = 'g * m * lever / (n * w * t)'
    const shear = (put.g * put.m * put.lever) / (put.n * put.w * put.t)
    const material = bench.word('track.tooth.material')
    if (!isMaterialId(material)) return { shear: output(shear, formula, put) }
    const whole = fromEngine(materialOf(material).shear, 'stress', 'MPa')
    return {
      knockdown: output((100 * shear) / whole, `100 * ${formula} / tau_m`, { ...put, tau_m: whole }),
      shearMpa: output(shear, formula, put),
    }
  },
}
