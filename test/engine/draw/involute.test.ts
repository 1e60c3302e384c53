import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  gearOutline,
  gearRadii,
  halfToothAngle,
  involuteOf,
  meshingPhase,
  toothOutline,
  toppedRadius,
} from '../../../shared-engine/draw/parts/involute.ts'
import type { GearForm } from '../../../shared-engine/draw/parts/involute.ts'

const degree = Math.PI / 180

const forms = fc.record({
  module: fc.double({ min: 0.0001, max: 0.05, noNaN: true }),
  pressureAngle: fc.double({ min: 14.5 * degree, max: 25 * degree, noNaN: true }),
  teeth: fc.integer({ min: 4, max: 400 }),
})

/** Rotates (about the origin) and shifts points of a wheel to where it stands. */
function placed(points: readonly { x: number; y: number }[], angle: number, x: number) {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return points.map((point) => ({ x: x + point.x * cos - point.y * sin, y: point.x * sin + point.y * cos }))
}

describe('involute', () => {
  it('agrees with the table of the function', () => {
    // Involute tables as printed in gear handbooks (Machinery's Handbook, "Involute Functions"), from memory:
    // 5e-8, they give seven decimals.
    expect(Math.abs(involuteOf(14.5 * degree) - 0.0055448)).toBeLessThan(5e-8)
    expect(Math.abs(involuteOf(20 * degree) - 0.0149044)).toBeLessThan(5e-8)
    expect(Math.abs(involuteOf(25 * degree) - 0.0299753)).toBeLessThan(5e-8)
  })

  it('has the tooth thickness of half a pitch, π m/2, at the pitch circle', () => {
    // ISO 53:1998, basic rack: tooth thickness equals space width on the pitch line. 1e-12: closed form.
    fc.assert(
      fc.property(forms, (form) => {
        const { pitch } = gearRadii(form)
        const thickness = 2 * pitch * halfToothAngle(form, pitch)
        expect(Math.abs(thickness / ((Math.PI * form.module) / 2) - 1)).toBeLessThan(1e-12)
      }),
    )
  })

  it('draws flanks whose normals touch the base circle', () => {
    // Definition of the involute (ISO 21771-1, generation by a taut string): at every flank point the normal is tangent
    // to the base circle. Chords of a fine polyline stand in for tangents: 1 % of the base radius.
    const form: GearForm = { module: 0.002, pressureAngle: 20 * degree, teeth: 24 }
    const { base } = gearRadii(form)
    const outline = toothOutline(form, 400)
    const flank = outline.slice(20, 390)
    for (let index = 1; index < flank.length; index++) {
      const from = flank[index - 1]
      const to = flank[index]
      if (from === undefined || to === undefined) continue
      const length = Math.hypot(to.x - from.x, to.y - from.y)
      const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length]
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
      // Distance of the normal through `middle` from the wheel's centre.
      expect(Math.abs(Math.abs(middle.x * dx + middle.y * dy) / base - 1)).toBeLessThan(0.01)
    }
  })

  it('touches along the line of action: two wheels in mesh neither cut into each other nor part', () => {
    // Contact of involutes lies on the common tangent of the base circles (ISO 21771-1). Sampled through one pitch of
    // turning: in a band along that line, the gap between the two outlines stays within 2 % of the module.
    const driver: GearForm = { module: 1, pressureAngle: 20 * degree, teeth: 19 }
    const driven: GearForm = { module: 1, pressureAngle: 20 * degree, teeth: 37 }
    const centre = ((driver.teeth + driven.teeth) * driver.module) / 2
    const one = gearOutline(driver, 120)
    const two = gearOutline(driven, 120)
    for (let step = 0; step < 8; step++) {
      const turn = ((step / 8) * 2 * Math.PI) / driver.teeth
      const left = placed(one, turn, 0)
      const drivenTurn = meshingPhase(driven.teeth) - (turn * driver.teeth) / driven.teeth
      const inMesh = (point: { x: number; y: number }): boolean =>
        Math.abs(point.x - 9.5) < 0.9 && Math.abs(point.y) < 6
      const right = placed(two, drivenTurn, centre).filter(inMesh)
      const near = left.filter(inMesh)
      const gaps = near.map((a) => Math.min(...right.map((b) => Math.hypot(a.x - b.x, a.y - b.y))))
      const least = Math.min(...gaps)
      expect(least).toBeLessThan(0.02)
      const contact = near[gaps.indexOf(least)] ?? { x: 0, y: 0 }
      // Signed distance from the pitch point, across either line of action (both flanks touch: no backlash).
      const pitch = gearRadii(driver).pitch
      const across = [1, -1].map((side) =>
        Math.abs((contact.x - pitch) * Math.cos(20 * degree) + side * contact.y * Math.sin(20 * degree)),
      )
      expect(Math.min(...across)).toBeLessThan(0.1)
    }
  })

  it('never overlaps in mesh', () => {
    const driver: GearForm = { module: 1, pressureAngle: 20 * degree, teeth: 23 }
    const driven: GearForm = { module: 1, pressureAngle: 20 * degree, teeth: 41 }
    const centre = ((driver.teeth + driven.teeth) * driver.module) / 2
    const { base } = gearRadii(driven)
    const right = { radius: (x: number, y: number) => Math.hypot(x - centre, y) }
    for (let step = 0; step < 12; step++) {
      const turn = ((step / 12) * 2 * Math.PI) / driver.teeth
      const drivenTurn = meshingPhase(driven.teeth) - (turn * driver.teeth) / driven.teeth
      for (const { x, y } of placed(gearOutline(driver, 40), turn, 0)) {
        const radius = right.radius(x, y)
        if (radius <= base || radius >= gearRadii(driven).tip) continue
        const pitchAngle = (2 * Math.PI) / driven.teeth
        const angle = Math.atan2(y, x - centre) - drivenTurn
        const fromTooth = Math.abs(angle - pitchAngle * Math.round(angle / pitchAngle))
        // Angle past the flank, as an arc: 1e-6 of the module for rounding.
        expect((halfToothAngle(driven, radius) - fromTooth) * radius).toBeLessThan(1e-6)
      }
    }
  })

  it('closes with a top on every tooth, for any wheel', () => {
    fc.assert(
      fc.property(forms, (form) => {
        const radius = toppedRadius(form)
        expect(halfToothAngle(form, radius)).toBeGreaterThan(0)
        expect(radius).toBeLessThanOrEqual(gearRadii(form).tip * (1 + 1e-12))
        expect(radius).toBeGreaterThan(gearRadii(form).root)
      }),
    )
  })
})
