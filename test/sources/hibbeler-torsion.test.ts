import { describe, expect, it } from 'vitest'
import { comparativeStress } from '../../shared-engine/stages/shaft-strength.ts'

/** Torsion of a round shaft: what it compares to by von Mises, √3 τ, over √3. */
const shaftStress = (torque: number, diameter: number) =>
  comparativeStress(0, torque, diameter) / Math.sqrt(3)

describe('shaft in torsion', () => {
  // *Source:* R. C. Hibbeler, *Mechanics of Materials*, 10th edition in SI units, examples 5.1 and 5.3; questions as
  // reproduced in an open teaching repository, answers from memory.
  it('a solid shaft of 100 mm radius bears 118 kN·m at 75 MPa', () => {
    // 0.3 %: three figures
    expect(Math.abs(shaftStress(118e3, 0.2) / 75e6 - 1)).toBeLessThan(3e-3)
  })

  it('5 hp at 175 rpm and 100 MPa ask for 22 mm to the whole millimetre', () => {
    // 550 ft·lbf/s a horsepower
    const torque = (5 * 745.699872) / ((175 * 2 * Math.PI) / 60)
    expect(shaftStress(torque, 0.022)).toBeLessThan(100e6)
    expect(shaftStress(torque, 0.0215)).toBeGreaterThan(100e6)
  })

  it('and 14.5 ksi for 0.858 in, in the customary edition', () => {
    const torque = 150.1 * 4.4482216152605 * 0.3048
    // 0.4 %: three figures, cubed
    expect(Math.abs(shaftStress(torque, 0.858 * 0.0254) / (14.5e3 * 6894.757293168) - 1)).toBeLessThan(4e-3)
  })
})
