import { describe, expect, it } from 'vitest'
import { comparativeStress } from '../../shared-engine/stages/shaft-strength.ts'
import { stopSpringOf } from '../../shared-engine/geometry/stop-spring.ts'
import { heldEnergy, stopForce } from '../../shared-engine/track/stop.ts'

// *Source:* a flywheel stopped by its shaft, a standard exercise of machine design on torsional impact: 30 kg at a radius
// of gyration of 0.5 m, 100 rpm, shaft 60 mm by 1.2 m, G 80 GPa; 411.2 J, 196.9 MPa, 5.64°. Entries from memory, as those
// that give the printed results.

const inertia = 30 * 0.5 ** 2
const speed = (100 * 2 * Math.PI) / 60
const diameter = 0.06
const length = 1.2
const shearModulus = 80e9
const torsion = (shearModulus * Math.PI * diameter ** 4) / 32 / length

describe('a flywheel stopped by its shaft', () => {
  // the law of a held loop with an angle for a path and a torque for a force: no relief, no pull
  const spring = stopSpringOf(Infinity, 1 / torsion, 1, null, 0)
  const torque = stopForce(spring, 0, inertia * speed * speed)

  it('leaves 411.2 J in the shaft that holds it', () => {
    expect(Math.abs(heldEnergy(spring, torque) / 2 - 411.2)).toBeLessThan(0.05) // one decimal
  })

  it('is stopped with 196.9 MPa after 5.64°', () => {
    const shear = comparativeStress(0, torque, diameter) / Math.sqrt(3)
    expect(Math.abs(shear / 1e6 - 196.9)).toBeLessThan(0.1) // one decimal, from a rounded energy
    expect(Math.abs((torque / torsion) * (180 / Math.PI) - 5.64)).toBeLessThan(5e-3) // two decimals
  })
})
