import { describe, expect, test } from 'vitest'
import { normalQuantile, truncatedNormalQuantile } from '../../../shared-engine/numeric/normal.ts'
import { quantileOf, rankCorrelationOf, ranksOf } from '../../../shared-engine/numeric/statistics.ts'

describe('quantiles', () => {
  test('definition 7 of Hyndman and Fan (1996): position 1 + (n − 1) p among the order statistics', () => {
    // Worked by hand from the definition: n = 10, p = 0.25 → position 3.25 → 7 + 0.25 · (8 − 7).
    const sample = [3, 6, 7, 8, 8, 10, 13, 15, 16, 20]
    expect(quantileOf(sample, 0.25)).toBe(7.25)
    expect(quantileOf(sample, 0.5)).toBe(9)
    expect(quantileOf(sample, 0.75)).toBe(14.5)
    expect(quantileOf(sample, 0)).toBe(3)
    expect(quantileOf(sample, 1)).toBe(20)
  })

  test('of one and of none', () => {
    expect(quantileOf([4], 0.9)).toBe(4)
    expect(quantileOf([], 0.5)).toBeNull()
  })
})

describe('rank correlation', () => {
  test('the encyclopedia’s worked example of ten pairs: −29/165', () => {
    // Wikipedia, "Spearman's rank correlation coefficient", example (intelligence quotient and hours): −0.175757575…
    const quotient = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110]
    const hours = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17]
    // 1e-15: closed form.
    expect(rankCorrelationOf(quotient, hours)).toBeCloseTo(-29 / 165, 15)
  })

  test('ties share the mean of their ranks (Kendall and Gibbons, 1990, chapter 3)', () => {
    expect([...ranksOf([10, 20, 20, 5, 20])]).toEqual([2, 4, 4, 1, 4])
    // Worked by hand: mid-ranks 1, 2.5, 2.5, 4 against 1, 2, 3, 4: 4.5/√(4.5 · 5). 1e-15: closed form.
    expect(rankCorrelationOf([1, 2, 2, 3], [1, 2, 3, 4])).toBeCloseTo(4.5 / Math.sqrt(4.5 * 5), 15)
  })

  test('no answer where one side does not vary', () => {
    expect(rankCorrelationOf([1, 1, 1], [1, 2, 3])).toBeNull()
    expect(rankCorrelationOf([1], [1])).toBeNull()
    expect(rankCorrelationOf([1, 2, 3], [1, 4, 9])).toBe(1)
    expect(rankCorrelationOf([1, 2, 3], [9, 4, 1])).toBe(-1)
  })
})

describe('normal quantile', () => {
  test('check values of Wichura, Algorithm AS 241 (1988), and the usual table', () => {
    // 1e-14: the algorithm claims about 1 part in 10^16, a few roundings on top.
    const close = (p: number, z: number) => expect(Math.abs(normalQuantile(p) / z - 1)).toBeLessThan(1e-14)
    close(0.25, -0.6744897501960817)
    close(0.001, -3.090232306167814)
    close(1e-20, -9.262340089798408)
    close(0.975, 1.959963984540054)
    expect(normalQuantile(0.5)).toBe(0)
  })

  test('ends and outside', () => {
    expect(normalQuantile(0)).toBe(-Infinity)
    expect(normalQuantile(1)).toBe(Infinity)
    expect(normalQuantile(1.5)).toBeNaN()
  })

  test('truncated at three it ends there, keeps its middle and its symmetry', () => {
    // 1e-14: the probability below −3 has sixteen figures.
    expect(truncatedNormalQuantile(0)).toBeCloseTo(-3, 14)
    expect(truncatedNormalQuantile(1)).toBeCloseTo(3, 14)
    expect(truncatedNormalQuantile(0.5)).toBe(0)
    for (const p of [0.01, 0.2, 0.4]) {
      expect(truncatedNormalQuantile(p)).toBeCloseTo(-truncatedNormalQuantile(1 - p), 12)
      expect(Math.abs(truncatedNormalQuantile(p))).toBeLessThan(Math.abs(normalQuantile(p)))
    }
  })
})
