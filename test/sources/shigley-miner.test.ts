import { describe, expect, it } from 'vitest'
import { basquinLife, minerSum, repetitionsToFailure } from '../../shared-engine/log/life/miner.ts'

// Shigley's Mechanical Engineering Design, 8th edition, section 6-15, Cumulative Fatigue Damage: a steel of S_ut = 80 kpsi,
// f S_ut = 72 kpsi at 1,000 cycles, endurance limit 40 kpsi at a million. At 60 kpsi the book has N_1 = 8,520 cycles; after
// 3,000 of them 5,520 are left by Miner's rule. Written from memory of the book.
const line = { first: [72, 1e3], second: [40, 1e6], endurance: 40 } as const

describe('Miner’s sum against Shigley’s example', () => {
  it('gives the life at 60 kpsi on the line between the two points', () => {
    // the book reads to three figures
    expect(Math.abs(basquinLife(60, line) / 8520 - 1)).toBeLessThan(5e-3)
  })

  it('leaves 5,520 of 8,520 cycles after 3,000', () => {
    const used = minerSum([{ count: 3000, life: 8520 }])
    expect((1 - used) * 8520).toBeCloseTo(5520, 9)
    expect(
      minerSum([
        { count: 3000, life: 8520 },
        { count: 5520, life: 8520 },
      ]),
    ).toBeCloseTo(1, 12)
  })

  it('takes nothing for cycles at the endurance limit, and says so of a history that uses up nothing', () => {
    expect(basquinLife(40, line)).toBe(Infinity)
    expect(minerSum([{ count: 1e9, life: Infinity }])).toBe(0)
    expect(repetitionsToFailure([{ count: 1e9, life: Infinity }])).toBe(Infinity)
    expect(repetitionsToFailure([{ count: 1, life: 4 }])).toBe(4)
  })

  it('gives no number for a life that is none', () => {
    expect(minerSum([{ count: 1, life: 0 }])).toBeNaN()
  })
})
