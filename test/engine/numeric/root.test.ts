import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bracketedRoot } from '../../../shared-engine/numeric/root.ts'

/**
 * Test functions with published roots.
 * - Wallis's cubic x³ − 2x − 5 = 0: 2.094551481542326591482386540579…, OEIS A007493.
 * - cos x = x: 0.739085133215160641655312087673…, OEIS A003957 (the Dottie number).
 * - x·eˣ = 1: 0.567143290409783872999968662210…, OEIS A030178 (the omega constant).
 * - first positive root of tan x = x: 4.493409457909064175307880927291…, OEIS A115365.
 * - J₀ by its integral is left out; x² = 2: OEIS A002193.
 * - Alefeld, Potra and Shi, *Algorithm 748*, ACM Trans. Math. Softw. 21 (1995), table I: no. 2 with a = −40, b = −1 on
 *   [−9, 31] has its root at 0; no. 14: (N x − 1)/((N − 1) x) at 1/N. From memory.
 */
const published: readonly (readonly [string, (x: number) => number, number, number, number])[] = [
  ['x² − 2', (x) => x * x - 2, 0, 2, 1.4142135623730951],
  ['x³ − 2x − 5', (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
  ['cos x − x', (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  ['x eˣ − 1', (x) => x * Math.exp(x) - 1, 0, 1, 0.5671432904097838],
  ['tan x − x', (x) => Math.tan(x) - x, 4, 4.6, 4.493409457909064],
  ['−40 x e^(−x)', (x) => -40 * x * Math.exp(-x), -9, 31, 0],
  ['(20 x − 1)/(19 x)', (x) => (20 * x - 1) / (19 * x), 0.01, 1, 0.05],
]

describe('published roots', () => {
  test.each(published)('%s', (_, f, low, high, root) => {
    // 4 units of the last place: Brent's own bound, 2 ε |x|; 1e-15 for the root at 0.
    const bound = 4 * Number.EPSILON * Math.abs(root) + 1e-15
    expect(Math.abs((bracketedRoot(f, low, high) ?? NaN) - root)).toBeLessThanOrEqual(bound)
    expect(Math.abs((bracketedRoot(f, high, low) ?? NaN) - root)).toBeLessThanOrEqual(bound)
  })

  test('smooth ones take few evaluations', () => {
    for (const [name, f, low, high] of published.slice(0, 4)) {
      let count = 0
      bracketedRoot((x) => (count++, f(x)), low, high)
      expect(count, name).toBeLessThanOrEqual(12)
    }
  })
})

test('a jump is found to the last bit: the two numbers on either side', () => {
  const root = bracketedRoot((x) => (x < 0.3 ? -1 : 1), 0, 1) ?? NaN
  expect(Math.abs(root - 0.3)).toBeLessThanOrEqual(2 * Number.EPSILON)
})

test('no bracket, no root', () => {
  expect(bracketedRoot((x) => x * x + 1, -1, 1)).toBeNull()
  expect(bracketedRoot(() => NaN, 0, 1)).toBeNull()
  expect(bracketedRoot((x) => x, 0, 1)).toBe(0)
  expect(bracketedRoot((x) => x - 1, 0, 1)).toBe(1)
})

test('any rising line crosses where it crosses', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
      (root, slope) => {
        const found = bracketedRoot((x) => slope * (x - root), -2e6, 3e6) ?? NaN
        // 4 ε |x|: Brent's bound on either side.
        expect(Math.abs(found - root)).toBeLessThanOrEqual(4 * Number.EPSILON * Math.abs(root))
      },
    ),
  )
})
