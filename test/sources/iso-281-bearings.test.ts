import { describe, expect, it } from 'vitest'
import { bearingLifeHours } from '../../shared-engine/stages/bearing.ts'

// *Source:* ISO 281, basic rating life; Budynas and Nisbett, *Shigley's Mechanical Engineering Design*, example 11-1: 400
// lbf at 1725 rpm for 5 kh ask for a ball bearing of 3211 lbf. From memory.

const pound = 4.4482216152605

describe('basic rating life', () => {
  it('lasts the 5,000 h of the example', () => {
    const hours = bearingLifeHours(3211 * pound, 400 * pound, 1725, 'ball')
    expect(Math.abs(hours / 5000 - 1)).toBeLessThan(5e-4) // 3211 is rounded to four figures
  })

  it('is an eighth at twice the load for balls, and less for rollers', () => {
    const balls = bearingLifeHours(1000, 200, 600, 'ball') / bearingLifeHours(1000, 100, 600, 'ball')
    const rollers = bearingLifeHours(1000, 200, 600, 'roller') / bearingLifeHours(1000, 100, 600, 'roller')
    expect(balls).toBeCloseTo(1 / 8, 12) // closed form
    expect(rollers).toBeCloseTo(2 ** (-10 / 3), 12)
  })

  it('is not known without load or at rest', () => {
    expect(bearingLifeHours(1000, 0, 600, 'ball')).toBeNaN()
    expect(bearingLifeHours(1000, 100, 0, 'ball')).toBeNaN()
  })
})
