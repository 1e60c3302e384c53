import { describe, expect, it } from 'vitest'
import { elasticCoefficient } from '../../shared-engine/geometry/contact.ts'
import { flankPressure } from '../../shared-engine/stages/flank.ts'

// *Source:* Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, example 14-3: a steel pinion of 16 teeth on a
// wheel of 50 in cast iron, diametral pitch 8, 20°, face 1.5 in, 380 lbf, K_v 1.52. From memory.

const inch = 0.0254
const pound = 4.4482216152605
const psi = pound / inch ** 2

describe('example 14-3', () => {
  const steel = { modulus: 30e6 * psi, poisson: 0.292 }
  const iron = { modulus: 14.5e6 * psi, poisson: 0.211 }

  it('has an elastic coefficient of 1817 √psi', () => {
    expect(Math.abs(elasticCoefficient(steel, iron) / Math.sqrt(psi) / 1817 - 1)).toBeLessThan(5e-4) // four figures
  })

  it('presses its flanks with 72.4 kpsi', () => {
    const angle = Math.PI / 9
    const curvature = 1 / (0.5 * 2 * inch * Math.sin(angle)) + 1 / (0.5 * 6.25 * inch * Math.sin(angle))
    const normal = (1.52 * 380 * pound) / Math.cos(angle)
    const pressure = flankPressure(elasticCoefficient(steel, iron), normal, 1.5 * inch, curvature)
    expect(Math.abs(pressure / (72.4e3 * psi) - 1)).toBeLessThan(3e-3) // its radii are rounded to three figures
  })
})
