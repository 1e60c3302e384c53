import { describe, expect, it } from 'vitest'
import { bentStep } from '../../../shared-engine/numeric/bent-step.ts'

describe('a bent step', () => {
  it('goes from 2 to 10/7 towards √2, Halley’s x (x² + 3 a)/(3 x² + a) with a = 2', () => {
    // closed form of Halley's step for a square root, any text on numerical analysis; 1e-15: one rounding
    expect(Math.abs(2 + bentStep(2 * 2 - 2, 2 * 2, 2) - 10 / 7)).toBeLessThan(1e-15)
  })

  it('is Newton’s where the function does not bend', () => {
    expect(bentStep(3, 4, 0)).toBe(-3 / 4)
  })

  it('lands on the root of a ratio of straight lines at once', () => {
    // f = (1 + 2 x)/(3 + x), root −½: f′ = 5/(3 + x)², f″ = −10/(3 + x)³
    for (const x of [0, 1, 10]) {
      const step = bentStep((1 + 2 * x) / (3 + x), 5 / (3 + x) ** 2, -10 / (3 + x) ** 3)
      expect(Math.abs(x + step + 0.5)).toBeLessThan(1e-13)
    }
  })
})
