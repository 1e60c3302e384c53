import { describe, expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { Footing, setFooting } from '../../shared-engine/ground/footing.ts'
import { shearShare } from '../../shared-engine/ground/soil-shear.ts'
import { soilBuild } from '../fixtures/build/plain.ts'

// A pin: sinkages, thrusts and the longer tracks' resistance (2.61 kN; the book's 2.60 is in `test/sources`) worked by hand
// from the equations of J. Y. Wong, *Theory of Ground Vehicles*, chapter 2, for its two vehicles of 135 kN on fresh snow.

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

describe.each([
  ['3.6 m by 1 m', 3.6, 1, 0.227, 3.28, 51.68],
  ['4.5 m by 0.8 m', 4.5, 0.8, 0.226, 2.61, 52.45],
] as const)('tracks of %s', (_name, length, width, sinkage, resistance, thrust) => {
  const footing = footingOf(length, width)

  it('sink', () => {
    // 0.0005 m: three figures
    expect(Math.abs(footing.sinkage - sinkage)).toBeLessThan(5e-4)
  })

  it('are held back by compaction', () => {
    // 0.3 %: three figures, from a sinkage of three figures
    expect(Math.abs(footing.groundResistance / (1000 * resistance) - 1)).toBeLessThan(3e-3)
  })

  it('push at 20 % slip', () => {
    // 1e-3: four figures; longer tracks shear the snow further at the same slip
    const found = footing.shearStrength * shearShare(0.2 * footing.fullShear)
    expect(Math.abs(found / (1000 * thrust) - 1)).toBeLessThan(1e-3)
  })
})
