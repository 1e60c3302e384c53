import { describe, expect, it } from 'vitest'
import { Footing, setFooting, soilModulusOf } from '../../shared-engine/ground/footing.ts'
import { setShear, Shear, shearShare, shearShareInverse } from '../../shared-engine/ground/soil-shear.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { pivotThrustOf } from '../../shared-engine/vehicle/pivot.ts'
import { integrate } from '../../shared-engine/numeric/quadrature.ts'
import { soilBuild } from '../fixtures/build/plain.ts'

// A pin: the numbers are ours, worked by hand. The forms are those of J. Y. Wong, *Theory of Ground Vehicles*, 4th edition
// (2008), from memory: sinkage and compaction resistance of a track (section 2.5, after Bekker), thrust from shear
// displacement (section 2.6, after Janosi and Hanamoto), skid steering with uniform pressure (section 6.1). The vehicle is
// that of the text's track comparison, 135 kN on two tracks, on the sand of its table 2.3 (n 1.1, k_c 0.99, k_φ 1528.43,
// φ 28°, K 2.5 cm for loose sand), patch 3.6 × 0.5 m.

const heaviness = 9.80665

/** A machine of a weight on two loops of a patch, on that sand; everything else does not matter here. */
function onSand(weight: number, length: number, width: number): Machine {
  const build = soilBuild()
  const read = readBuildValue({
    ...build,
    track: { ...build.track, count: 2 },
    motor: { ...build.motor, count: 2 },
    vehicle: {
      massKg: weight / heaviness,
      contactLengthMm: length * 1000,
      contactWidthMm: width * 1000,
      gaugeMm: 1800,
    },
    ground: {
      model: 'soil',
      soil: { n: 1.1, kc: 0.99, kphi: 1528.43, cohesionKpa: 1.04, frictionDegrees: 28, shearModulusMm: 25 },
      turnFriction: 0.5,
    },
    tolerances: {},
    origins: {},
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return machineOf(read.value)
}

describe('a track of 135 kN on dry sand', () => {
  const machine = onSand(135_000, 3.6, 0.5)
  const footing = new Footing()
  setFooting(footing, machine, 0, 1)

  it('presses with 37.5 kPa', () => {
    // 1e-9: closed form
    expect(Math.abs(footing.groundPressure / 37_500 - 1)).toBeLessThan(1e-9)
  })

  it('sinks (p/(k_c/b + k_φ))^(1/n): 3.4 cm', () => {
    // k = 0.99/0.5 + 1528.43 = 1530.41 kN/m^3.1; (37.5/1530.41)^(1/1.1) = 0.03432; 0.1 %: four figures by hand
    expect(soilModulusOf({ cohesiveModulus: 990, frictionalModulus: 1_528_430 }, 3.6, 0.5)).toBeCloseTo(
      1_530_410,
      3,
    )
    expect(Math.abs(footing.sinkage / 0.03432 - 1)).toBeLessThan(1e-3)
  })

  it('is held back by 2 b k z^(n+1)/(n+1): 0.613 kN', () => {
    // 2 · 0.5 · 37.5 · 0.03432/2.1 = 0.6129 kN; 0.1 %: four figures by hand
    expect(Math.abs(footing.groundResistance / 612.9 - 1)).toBeLessThan(1e-3)
  })

  it('pushes with (A c + W tan φ)[1 − K/(iL)(1 − e^(−iL/K))] at 20 % slip: 72.9 kN', () => {
    // A c + W tan φ = 3.6 · 1.04 + 135 · 0.53171 = 75.525 kN; iL/K = 28.8; 1 − 1/28.8 = 0.96528: 72.90 kN
    const thrust = footing.shearStrength * shearShare((0.2 * 3.6) / 0.025)
    expect(Math.abs(footing.shearStrength / 75_525 - 1)).toBeLessThan(1e-4)
    expect(Math.abs(thrust / 72_903 - 1)).toBeLessThan(1e-4)
  })

  it('turns on the spot against μ_t W L/4 in all: section 6.1', () => {
    const push = pivotThrustOf(machine, footing)
    const moment = (push - footing.groundResistance / 2) * 1.8
    // two sides push at half of the gauge each; 1e-9: closed form
    expect(Math.abs(moment / ((0.5 * 135_000 * 3.6) / 4) - 1)).toBeLessThan(1e-9)
  })
})

describe('share of the shear strength', () => {
  it.each([0.001, 0.09, 0.11, 1, 5, 36, 38, 900])(
    'is the mean of 1 − e^(−j/K) over the patch, x = %d',
    (x) => {
      const mean = integrate((at) => 1 - Math.exp(-at * x), 0, 1).value
      // 1e-9: the integral's own tolerance
      expect(Math.abs(shearShare(x) / mean - 1)).toBeLessThan(1e-9)
    },
  )

  it('is turned round by its inverse, and its slope is that of differences', () => {
    const shear = new Shear()
    for (let x = 1e-9; x < 5000; x *= 1.7) {
      const share = shearShare(x)
      // near a share of 1 the last digit of the share is worth 1/(1 − share) of x
      expect(Math.abs(shearShareInverse(share) / x - 1)).toBeLessThan(
        1e-12 + (4 * Number.EPSILON) / (1 - share),
      )
      setShear(shear, x)
      const step = 1e-4 * x
      const difference = (shearShare(x + step) - shearShare(x - step)) / (2 * step)
      // 1e-6: central difference, and its digits lost where the share is near 1
      expect(Math.abs(shear.slope / difference - 1)).toBeLessThan(1e-6 + 1e-11 / (x * shear.slope))
      expect(shear.share).toBeCloseTo(share, 15)
    }
  })
})
