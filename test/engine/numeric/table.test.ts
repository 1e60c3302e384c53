import { expect, test } from 'vitest'
import { piecewiseLinear } from '../../../shared-engine/numeric/table.ts'

const xs = [0, 10, 20]
const ys = [3, 4, 2]

test('exact in the rows, straight between them', () => {
  const f = piecewiseLinear(xs, ys, 'hold')
  xs.forEach((x, index) => expect(f(x)).toBe(ys[index]))
  // 1e-15: closed form.
  expect(f(2.5)).toBeCloseTo(3.25, 15)
  expect(f(15)).toBeCloseTo(3, 15)
})

test('Shigley’s example 14-1 reads Y = 0.296 for 16 teeth and interpolates 0.3105 for 18.3', () => {
  // Lewis table 14-2 of Shigley's Mechanical Engineering Design, rows 16 to 19; from memory.
  const lewis = piecewiseLinear([16, 17, 18, 19], [0.296, 0.303, 0.309, 0.314], 'hold')
  expect(lewis(16)).toBe(0.296)
  // 1e-12: closed form, 0.309 + 0.3 · 0.005.
  expect(lewis(18.3)).toBeCloseTo(0.3105, 12)
})

test('past the ends the policy rules', () => {
  expect(piecewiseLinear(xs, ys, 'hold')(-5)).toBe(3)
  expect(piecewiseLinear(xs, ys, 'hold')(25)).toBe(2)
  expect(piecewiseLinear(xs, ys, 'extend')(-10)).toBe(2)
  expect(piecewiseLinear(xs, ys, 'extend')(30)).toBe(0)
  expect(piecewiseLinear(xs, ys, 'absent')(25)).toBeNaN()
  expect(piecewiseLinear([1], [7], 'extend')(9)).toBe(7)
})

test('rows that do not rise are a bug of ours', () => {
  expect(() => piecewiseLinear([0, 0], [1, 2], 'hold')).toThrow('table rows fall at 1')
  expect(() => piecewiseLinear([0], [1, 2], 'hold')).toThrow('as many values as rows')
})
