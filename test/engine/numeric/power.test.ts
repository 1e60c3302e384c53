import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { power } from '../../../shared-engine/numeric/power.ts'

describe('power', () => {
  it('agrees with the built-in operator, ECMA-262 Number::exponentiate', () => {
    const base = fc.double({ min: 1e-6, max: 1e9, noNaN: true })
    const exponent = fc.double({ min: -4, max: 4, noNaN: true })
    fc.assert(
      fc.property(base, exponent, (x, y) => {
        // (1 + |y ln x|) units in the last place, as its page says, and as much again for the operator's own
        const allowed = 2 * (1 + Math.abs(y * Math.log(x))) * Number.EPSILON
        expect(Math.abs(power(x, y) / x ** y - 1)).toBeLessThanOrEqual(allowed)
      }),
    )
  })

  it('gives the table values 2^½ and e of Abramowitz and Stegun, table 1.1 (from memory)', () => {
    // 1e-15: the table has 20 figures, a double 16
    expect(Math.abs(power(2, 0.5) - 1.414213562373095)).toBeLessThan(1e-15)
    expect(power(Math.E, 1)).toBeCloseTo(2.718281828459045, 14)
  })
})
