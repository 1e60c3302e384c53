import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contactRatioOf } from '../../shared-engine/stages/gear/geometry.ts'
import {
  gearMeshOf,
  shiftNeeded,
  undercutBelow,
  workingInvolute,
} from '../../shared-engine/geometry/gear-mesh.ts'
import { inverseInvolute, involute } from '../../shared-engine/numeric/involute.ts'
import { evenly } from '../fixtures/evenly.ts'

// *Source:* ISO 21771; the involute table of any gear handbook (inv 20° = 0.014904, inv 25° = 0.029975); Maag's rule that
// 14 teeth may be made at 20° in practice and 17 in theory. The numbers from memory.

const degree = Math.PI / 180

describe('involute', () => {
  it('has the values of the table', () => {
    expect(Math.abs(involute(20 * degree) - 0.014904)).toBeLessThan(5e-7) // six decimals
    expect(Math.abs(involute(25 * degree) - 0.029975)).toBeLessThan(5e-7)
    expect(Math.abs(involute(14.5 * degree) - 0.0055448)).toBeLessThan(5e-8) // seven decimals
  })

  it('is undone by its inverse', () => {
    const angles = evenly(0.5 * degree, 85 * degree)
    fc.assert(
      fc.property(angles, (angle) => {
        // 1e-9 relative: a small angle's involute is a difference of near equals, φ³/3
        expect(Math.abs(inverseInvolute(involute(angle)) / angle - 1)).toBeLessThan(1e-9)
      }),
    )
  })

  it('does not exist for nothing or less', () => {
    expect(inverseInvolute(0)).toBeNaN()
    expect(inverseInvolute(-0.01)).toBeNaN()
  })
})

const pairs = fc.record({
  driverTeeth: fc.integer({ min: 20, max: 120 }),
  drivenTeeth: fc.integer({ min: 20, max: 120 }),
  driverShift: evenly(-0.2, 0.6),
  drivenShift: evenly(-0.2, 0.6),
  pressureAngle: fc.constantFrom(20 * degree, 25 * degree),
})

describe('a shifted pair', () => {
  it('is the plain pair without shift, where no tip passes the other’s base tangent', () => {
    const mesh = gearMeshOf({
      driverTeeth: 25,
      drivenTeeth: 60,
      driverShift: 0,
      drivenShift: 0,
      pressureAngle: 20 * degree,
    })
    const plain = contactRatioOf({
      driverTeeth: 25,
      drivenTeeth: 60,
      sinPressureAngle: Math.sin(20 * degree),
      cosPressureAngle: Math.cos(20 * degree),
    })
    expect(mesh.contactRatio).toBeCloseTo(plain, 12) // the same closed form
    expect(mesh.centre).toBeCloseTo(42.5, 12)
  })

  it('has its flanks touch: the base pitches of both wheels add up to the line of action', () => {
    fc.assert(
      fc.property(pairs, (pair) => {
        if (workingInvolute(pair) <= 0) return
        const mesh = gearMeshOf(pair)
        // the tooth thicknesses at the working circles add up to one pitch there: no backlash (ISO 21771)
        const thickness = (teeth: number, shift: number) => {
          const radius = (mesh.centre * teeth) / (pair.driverTeeth + pair.drivenTeeth)
          const half =
            (Math.PI / 2 + 2 * shift * Math.tan(pair.pressureAngle)) / teeth +
            involute(pair.pressureAngle) -
            involute(mesh.workingAngle)
          return 2 * radius * half
        }
        const pitch = (2 * Math.PI * mesh.centre) / (pair.driverTeeth + pair.drivenTeeth)
        const both =
          thickness(pair.driverTeeth, pair.driverShift) + thickness(pair.drivenTeeth, pair.drivenShift)
        expect(Math.abs(both / pitch - 1)).toBeLessThan(1e-9) // closed form over a root of 1e-16
      }),
    )
  })

  it('spreads its axles with the sum of the shifts', () => {
    const base = {
      driverTeeth: 12,
      drivenTeeth: 40,
      driverShift: 0,
      drivenShift: 0,
      pressureAngle: 20 * degree,
    }
    const wide = gearMeshOf({ ...base, driverShift: 0.4 })
    expect(wide.centre).toBeGreaterThan(26)
    expect(wide.centre).toBeLessThan(26.4) // less than the shift itself: the working angle grows
    expect(gearMeshOf({ ...base, driverShift: 0.4, drivenShift: -0.4 }).centre).toBeCloseTo(26, 12)
  })
})

describe('undercut', () => {
  it('begins below 17.1 teeth at 20°, 32 at 14.5°', () => {
    expect(undercutBelow(0, 20 * degree)).toBeCloseTo(17.097, 3)
    expect(undercutBelow(0, 14.5 * degree)).toBeCloseTo(31.9, 1)
  })

  it('goes with the shift that is needed, and not with less', () => {
    const shift = shiftNeeded(12, 20 * degree)
    expect(shift).toBeCloseTo(0.298, 3) // (17 − 12)/17 in the handbook’s rounded form: 0.294
    expect(undercutBelow(shift, 20 * degree)).toBeCloseTo(12, 9)
    expect(shiftNeeded(30, 20 * degree)).toBe(0)
  })
})
