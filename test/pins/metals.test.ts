import { describe, expect, it } from 'vitest'
import { type MaterialId, materialIds, materialOf } from '../../shared-engine/reference/materials.ts'

// A pin: values of the table typed a second time, both from memory, with the standards that they are remembered from.

/** Tensile and yield strength, MPa, with the standard that promises them. From memory. */
const strengths: readonly (readonly [MaterialId, number, number, string])[] = [
  ['steel-c45', 620, 340, 'EN 10083-2:2006, C45 +N, up to 16 mm'],
  ['steel-42crmo4', 1000, 750, 'EN 10083-3:2006, 42CrMo4 +QT, 16 to 40 mm, least'],
  ['stainless-304', 515, 205, 'ASTM A240, type 304, least'],
  ['aluminium-6061', 310, 276, 'Metals Handbook, 10th ed., vol. 2, 6061-T6, typical'],
  ['aluminium-7075', 572, 503, 'Metals Handbook, 10th ed., vol. 2, 7075-T6, typical'],
  ['titanium-6al4v', 950, 880, 'Metals Handbook, 10th ed., vol. 2, Ti-6Al-4V annealed, typical'],
]

/** Ultimate shear strength, MPa. *Source:* Metals Handbook, 10th ed., vol. 2, typical. From memory. */
const shears: readonly (readonly [MaterialId, number])[] = [
  ['aluminium-6061', 207],
  ['aluminium-7075', 331],
  ['titanium-6al4v', 550],
]

/** Young's modulus, GPa. *Source:* Shigley's Mechanical Engineering Design, table A-5. From memory. */
const moduli: readonly (readonly [MaterialId, number, number])[] = [
  ['steel-c45', 207, 0.005],
  ['steel-42crmo4', 207, 0.005],
  // 2 %: the book gives one value for all stainless steels.
  ['stainless-304', 190, 0.02],
  // 4 %: the book gives one value for all alloys; 6061 is the softer.
  ['aluminium-6061', 71.7, 0.04],
  ['aluminium-7075', 71.7, 0.005],
  ['titanium-6al4v', 114, 0.005],
  // 10 %: the book's brass holds less zinc and no lead.
  ['brass-cz121', 106, 0.1],
]

describe('metals', () => {
  it.each(strengths)('%s: %d and %d MPa, %s', (id, tensile, yielding) => {
    // 0.5 %: handbooks convert from kpsi and round differently.
    expect(Math.abs(materialOf(id).tensile / (tensile * 1e6) - 1)).toBeLessThan(0.005)
    expect(Math.abs(materialOf(id).yield / (yielding * 1e6) - 1)).toBeLessThan(0.005)
  })

  it.each(shears)('%s shears at %d MPa', (id, shear) => {
    expect(Math.abs(materialOf(id).shear / (shear * 1e6) - 1)).toBeLessThan(0.005)
  })

  it.each(moduli)('%s: a modulus of %d GPa', (id, modulus, tolerance) => {
    expect(Math.abs(materialOf(id).modulus / (modulus * 1e9) - 1)).toBeLessThan(tolerance)
  })

  it('whose shear strength is not tabulated have 0.577 of the tensile, as the table says', () => {
    const tabulated: readonly string[] = [...shears.map(([id]) => id)]
    const others = materialIds.filter((id) => materialOf(id).family === 'metal' && !tabulated.includes(id))
    expect(others.length).toBeGreaterThan(3)
    // 0.2 %: rounded to whole MPa. Source: distortion energy, 1/√3.
    for (const id of others)
      expect(Math.abs(materialOf(id).shear / materialOf(id).tensile / 0.577 - 1)).toBeLessThan(0.002)
  })
})
