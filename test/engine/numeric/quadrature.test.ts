import { describe, expect, test } from 'vitest'
import { legendreRule } from '../../../shared-engine/numeric/legendre.ts'
import { gaussLegendre, integrate } from '../../../shared-engine/numeric/quadrature.ts'

/**
 * Integrals with published values.
 * - ∫₀¹ 4/(1 + x²) = π; ∫₀^∞-type ones are left out.
 * - ∫₀¹ √x = 2/3, ∫₀¹ ln x = −1: QUADPACK (1983), test cases of chapter 4, α = 0.5 and end singularity.
 * - ∫₀¹ x^x = 0.783430510712134407059264386526975…, OEIS A083648 (the sophomore's dream).
 * - ∫₀^π sin x = 2; ∫₀¹ e^(−x²) = 0.746824132812427025399467436131…, OEIS A103979.
 * - Catalan's constant ∫₀¹ arctan(x)/x = 0.915965594177219015054603514932…, OEIS A006752.
 */
const published: readonly (readonly [string, (x: number) => number, number, number, number])[] = [
  ['4/(1 + x²)', (x) => 4 / (1 + x * x), 0, 1, Math.PI],
  ['√x', Math.sqrt, 0, 1, 2 / 3],
  ['ln x', Math.log, 0, 1, -1],
  ['x^x', (x) => x ** x, 0, 1, 0.7834305107121344],
  ['sin x', Math.sin, 0, Math.PI, 2],
  ['exp(−x²)', (x) => Math.exp(-x * x), 0, 1, 0.746824132812427],
  ['arctan(x)/x', (x) => Math.atan(x) / x, 0, 1, 0.915965594177219],
]

describe('published integrals', () => {
  test.each(published)('∫ %s', (_, f, a, b, value) => {
    const found = integrate(f, a, b, { relative: 1e-11 })
    expect(found.reached).toBe(true)
    // What is said of the error has to hold; 4 ε for the printed value's own rounding.
    expect(Math.abs(found.value - value)).toBeLessThanOrEqual(
      found.error + 4 * Number.EPSILON * Math.abs(value),
    )
    expect(found.error).toBeLessThanOrEqual(1e-11 * Math.abs(value) * 1.001)
  })

  test.each(published)('backwards, ∫ %s is the negative', (_, f, a, b) => {
    const there = integrate(f, a, b)
    const back = integrate(f, b, a)
    expect(Math.abs(there.value + back.value)).toBeLessThanOrEqual(there.error + back.error)
  })
})

test('Gauss-Kronrod 7/15 is exact to degree 22, as published (QUADPACK, 1983)', () => {
  for (let degree = 0; degree <= 22; degree++) {
    const exact = degree % 2 === 0 ? 2 / (degree + 1) : 0
    // 1e-15: rounding of fifteen terms.
    expect(Math.abs(integrate((x) => x ** degree, -1, 1, { relative: 1 }).value - exact)).toBeLessThan(1e-15)
  }
})

test('a kink that is named costs nothing', () => {
  const f = (x: number) => Math.abs(x - 0.3)
  const named = integrate(f, 0, 1, { kinks: [0.3, 7] })
  expect(named.evaluations).toBe(30)
  // 1e-15: two straight lines.
  expect(Math.abs(named.value - 0.29)).toBeLessThan(1e-15)
  expect(integrate(f, 0, 1).evaluations).toBeGreaterThan(100)
})

test('what cannot be reached is said', () => {
  expect(integrate((x) => 1 / x, 0, 1, { mostIntervals: 20 }).reached).toBe(false)
  expect(integrate(() => NaN, 0, 1).reached).toBe(false)
  expect(integrate(() => 0, 0, 1)).toMatchObject({ value: 0, error: 0, reached: true })
})

test('Gauss-Legendre nodes and weights of five points: Abramowitz and Stegun, table 25.4, n = 5', () => {
  const { nodes, weights } = legendreRule(5)
  // 5e-16: the table has fifteen decimals.
  const close = (value: number | undefined, printed: number) =>
    expect(Math.abs((value ?? NaN) - printed)).toBeLessThan(6e-16)
  close(nodes[2], 0)
  close(nodes[3], 0.538469310105683)
  close(nodes[4], 0.90617984593866399)
  close(weights[2], 0.56888888888888889)
  close(weights[3], 0.478628670499366)
  close(weights[4], 0.23692688505618909)
})

test('Gauss-Legendre of n points is exact to degree 2n − 1 and no further', () => {
  for (const n of [1, 2, 3, 8, 33, 64]) {
    const degree = 2 * n - 1
    // 1e-13: Newton's nodes near the ends, raised to the power.
    expect(Math.abs(gaussLegendre((x) => x ** degree, 0, 1, n) * (degree + 1) - 1)).toBeLessThan(1e-13)
  }
  expect(Math.abs(gaussLegendre((x) => x ** 4, 0, 1, 2) - 0.2)).toBeGreaterThan(1e-3)
  expect(() => gaussLegendre((x) => x, 0, 1, 0)).toThrow('no Gauss-Legendre rule of 0 nodes')
})
