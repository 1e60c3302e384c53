import { describe, expect, it } from 'vitest'
import { decayOf } from '../../../shared-engine/numeric/decay.ts'

describe('e^(−x)', () => {
  it('is the built-in one over its whole range, to 2e-15 of itself and 3e-16 of 1', () => {
    let relative = 0
    let absolute = 0
    for (let step = 0; step <= 440_000; step += 1) {
      const x = step / 10_000
      const known = Math.exp(-x)
      relative = Math.max(relative, Math.abs(decayOf(x) / known - 1))
      absolute = Math.max(absolute, Math.abs(decayOf(x) - known))
    }
    // ln 2 as a double is right to 2e-17, which the factor x makes 1e-15 at its end
    expect(relative).toBeLessThan(2e-15)
    expect(absolute).toBeLessThan(3e-16)
  })

  it('has published values: e^(−1), e^(−10) (Abramowitz and Stegun, table 4.4, from memory)', () => {
    expect(decayOf(1)).toBeCloseTo(0.367879441171442, 15)
    expect(decayOf(10) * 1e5).toBeCloseTo(4.5399929762, 9)
    expect(decayOf(0)).toBe(1)
  })
})
