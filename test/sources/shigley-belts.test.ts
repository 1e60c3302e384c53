import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { beltLean, beltLength, teethInMesh } from '../../shared-engine/stages/belt/geometry.ts'
import { allowedBeltPull, beltFitOf } from '../../shared-engine/stages/belt/physics.ts'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import { integrate } from '../../shared-engine/numeric/quadrature.ts'

// *Source:* Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, eqs. 17-1 and 17-2 and example 17-1: pulleys
// of 6 and 18 in, shafts 8 ft apart, belt of 0.393 lbf/ft at 1750 rpm of the small one. From memory.

const inch = 0.0254
const poundForce = 4.4482216152605

/** A toothed pair with the example's pitch circles: pitch 2π/10 in, so that 30 and 90 teeth measure 6 and 18 in. */
const pitch = ((2 * Math.PI) / 10) * inch
const example = { pitch, driverTeeth: 30, drivenTeeth: 90, centre: 96 * inch }

describe('example 17-1', () => {
  it('wraps the small pulley by 3.0165 rad', () => {
    // 5e-5: printed to four decimals
    expect(Math.abs(Math.PI - 2 * beltLean(example) - 3.0165)).toBeLessThan(5e-5)
  })

  it('is 230.1 in long by eq. 17-2: √(4C² − (D − d)²) + ½ (D θ_D + d θ_d)', () => {
    // by hand from the printed angles, θ_D = 2π − θ_d = 3.2667: 191.624 + 38.450 in; 1e-4: five figures
    expect(Math.abs(beltLength(pitch, 30, 90, 96 * inch) / (230.074 * inch) - 1)).toBeLessThan(1e-4)
  })

  it('loses 25.6 lbf to its own mass at 2749 ft/min', () => {
    const stage = stagePartOf({
      kind: 'belt',
      driverTeeth: 30,
      drivenTeeth: 90,
      profile: 'H',
      widthMm: 76.2,
      centreMm: 3000,
      allowableTensionN: 10_000,
      efficiencyPercent: 100,
      drivenInertiaGcm2: 0,
    })
    if (stage.kind !== 'belt') throw new Error('not a belt')
    const heavy = { ...stage, massPerMetre: (0.393 * 0.45359237) / 0.3048 }
    const lost = allowedBeltPull(heavy, 0) - allowedBeltPull(heavy, (2749 * 0.3048) / 60)
    // 0.2 %: printed to three digits
    expect(Math.abs(lost / (25.6 * poundForce) - 1)).toBeLessThan(2e-3)
  })
})

const pairs = fc
  .record({
    pitch: fc.constantFrom(0.002032, 0.003, 0.005, 0.00508, 0.008, 0.009525, 0.0127),
    driverTeeth: fc.integer({ min: 10, max: 120 }),
    drivenTeeth: fc.integer({ min: 10, max: 120 }),
    apart: fc.double({ min: 1.05, max: 20, noNaN: true }),
  })
  .map(({ apart, ...wheels }) => ({
    ...wheels,
    centre: (apart * wheels.pitch * (wheels.driverTeeth + wheels.drivenTeeth)) / (2 * Math.PI),
  }))

describe('an open belt', () => {
  it('is as long as its path: two tangents and two arcs walked along', () => {
    fc.assert(
      fc.property(pairs, ({ pitch, driverTeeth, drivenTeeth, centre }) => {
        const [small, large] = [driverTeeth, drivenTeeth]
          .sort((one, other) => one - other)
          .map((teeth) => (pitch * teeth) / (2 * Math.PI)) as [number, number]
        // where a straight run touches each circle: its outward normal is the same at both ends
        const tilt = Math.acos((large - small) / centre)
        const from = [large * Math.cos(tilt), large * Math.sin(tilt)] as const
        const to = [centre + small * Math.cos(tilt), small * Math.sin(tilt)] as const
        const run = Math.hypot(to[0] - from[0], to[1] - from[1])
        const arcs = integrate((angle) => (Math.abs(angle) <= tilt ? small : large), -Math.PI, Math.PI, {
          kinks: [-tilt, tilt],
        }).value
        // 1e-9: closed form against quadrature of a step
        expect(
          Math.abs(beltLength(pitch, driverTeeth, drivenTeeth, centre) / (2 * run + arcs) - 1),
        ).toBeLessThan(1e-9)
      }),
    )
  })

  it('fits with whole teeth at the centre distance told', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        const fit = beltFitOf(pair)
        expect(Number.isInteger(fit.teeth)).toBe(true)
        expect(Math.abs(fit.teeth * pair.pitch - fit.length)).toBeLessThanOrEqual(pair.pitch * (0.5 + 1e-9))
        if (Number.isNaN(fit.centre)) return
        const length = beltLength(pair.pitch, pair.driverTeeth, pair.drivenTeeth, fit.centre)
        // 1e-12: the root of a smooth equation, put back
        expect(Math.abs(length / (fit.teeth * pair.pitch) - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it('holds half of the teeth of equal pulleys, and fewer of the smaller of two', () => {
    expect(teethInMesh({ pitch: 0.005, driverTeeth: 24, drivenTeeth: 24, centre: 0.2 })).toBe(12)
    // sin θ = 0.005 · 60/(2π)/0.1, θ = 0.4978 rad: 20 (½ − 0.15846) = 6.83
    const pair = { pitch: 0.005, driverTeeth: 20, drivenTeeth: 80, centre: 0.1 }
    expect(teethInMesh(pair)).toBe(6)
    expect(teethInMesh({ ...pair, driverTeeth: 80, drivenTeeth: 20 })).toBe(6)
  })
})
