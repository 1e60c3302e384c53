import { describe, expect, it } from 'vitest'
import { type ChainSizeId, chainSizeOf } from '../../shared-engine/reference/chains.ts'

// A pin: both the table and these rows were written from memory. What is from outside and independent of it stands in
// `test/sources/shigley-chains.test.ts` (strengths in pounds) and `bhandari-chains.test.ts` (ratings).

/**
 * *Source:* ISO 606, table of dimensions, as adopted in GOST 13568-97, annex A, table A.1: pitch, roller diameter, width
 * between inner plates, mm. 08A's roller is 7.95 in that edition and 7.92 in later ones. From memory.
 */
const dimensions: readonly (readonly [ChainSizeId, number, number, number])[] = [
  ['05B', 8, 5, 3],
  ['06B', 9.525, 6.35, 5.72],
  ['08A', 12.7, 7.95, 7.85],
  ['08B', 12.7, 8.51, 7.75],
  ['10A', 15.875, 10.16, 9.4],
  ['10B', 15.875, 10.16, 9.65],
  ['12A', 19.05, 11.91, 12.57],
  ['12B', 19.05, 12.07, 11.68],
]

/** *Source:* ISO 606, minimum tensile strength of one strand, kN; 10B in Bhandari, Design of Machine Elements, ex. 14.1. */
const strengths: readonly (readonly [ChainSizeId, number])[] = [
  ['05B', 4.4],
  ['06B', 8.9],
  ['08B', 17.8],
  ['10B', 22.2],
  ['12B', 28.9],
  ['12A', 31.1],
]

describe('ISO 606', () => {
  it.each(dimensions)('%s: pitch %d, roller %d, inner width %d mm', (id, pitch, roller, width) => {
    const size = chainSizeOf(id)
    expect(size.pitch * 1000).toBeCloseTo(pitch, 10)
    // 0.05 mm: editions differ in the second decimal.
    expect(Math.abs(size.rollerDiameter * 1000 - roller)).toBeLessThan(0.05)
    expect(size.innerWidth * 1000).toBeCloseTo(width, 10)
  })

  it.each(strengths)('%s: %d kN', (id, strength) => {
    // 1 %: editions differ in the third digit (12A 31.1 and 31.3).
    expect(Math.abs(chainSizeOf(id).minTensile / (strength * 1000) - 1)).toBeLessThan(0.01)
  })
})
