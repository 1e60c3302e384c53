import { expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { Footing, setFooting } from '../../shared-engine/ground/footing.ts'
import { soilBuild } from '../fixtures/build/plain.ts'

// *Source:* J. Y. Wong, *Theory of Ground Vehicles*, chapter 2, the worked comparison of two vehicles of 135 kN with the
// same contact area, the one with wider, the other with longer tracks, on fresh snow (n 1.6, k_c 4.37, k_φ 196.72, c 1 kPa,
// φ 19.7°, K 5 cm). Data and resistances, 3.28 and 2.60 kN, are from memory.

/** Footing of two tracks of that weight on that snow. */
function footingOf(length: number, width: number): Footing {
  const build = soilBuild()
  const machine = machineOf(
    completeBuild({
      ...build,
      track: { ...build.track, count: 2 },
      vehicle: { massKg: 135_000 / 9.80665, contactLengthMm: length * 1000, contactWidthMm: width * 1000 },
      ground: {
        model: 'soil',
        soil: { n: 1.6, kc: 4.37, kphi: 196.72, cohesionKpa: 1, frictionDegrees: 19.7, shearModulusMm: 50 },
      },
      tolerances: {},
      origins: {},
    }),
  )
  const footing = new Footing()
  setFooting(footing, machine, 0, 1)
  return footing
}

it.each([
  ['3.6 m by 1 m', 3.6, 1, 3.28],
  ['4.5 m by 0.8 m', 4.5, 0.8, 2.6],
] as const)('tracks of %s are held back by compaction', (_name, length, width, resistance) => {
  const found = footingOf(length, width).groundResistance / 1000
  // 0.8 %: the book goes through a sinkage of three figures, 0.226 ± 0.0005 m, which enters with the power n + 1 = 2.6, and
  // prints three figures of the resistance.
  expect(Math.abs(found / resistance - 1)).toBeLessThan(8e-3)
})
