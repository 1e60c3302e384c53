import { expect, it } from 'vitest'
import { PointKeeper } from '../../../shared-engine/log/point-keeper.ts'

// A long series on a screen: the least and the greatest of each column of time stay, wherever they stand, and a gap stays.

it('a peak of one sample in a million stays, and so does a gap; few points stay as they are', () => {
  const rows = 1_000_000
  const keeper = new PointKeeper(rows, 1000, 1, false)
  for (let row = 0; row < rows; row += 1) {
    const time = (row * 1000) / rows
    if (time > 400 && time < 410) continue
    keeper.add(time, row === 123_456 ? 99 : row === 777_777 ? -99 : Math.sin(row))
  }
  keeper.end()
  const { seconds, values } = keeper
  expect(seconds.length).toBeLessThan(45_000)
  expect(seconds[values.indexOf(99)]).toBeCloseTo(123.456, 9)
  expect(seconds[values.indexOf(-99)]).toBeCloseTo(777.777, 9)
  const gap = values.indexOf(null)
  expect([seconds[gap - 1], seconds[gap + 1]]).toEqual([400, 410])
  expect(values.filter((value) => value === null)).toHaveLength(1)
  expect(seconds.every((time, at) => at === 0 || time > (seconds[at - 1] ?? NaN))).toBe(true)
  const few = new PointKeeper(3, 2, 1, true)
  few.add(0, 1, 0.5, 1.5)
  few.add(2, 3, 2.5, 3.5)
  few.end()
  expect(few.seconds).toEqual([0, 1, 2])
  expect(few.values).toEqual([1, null, 3])
  expect(few.range).toEqual({ low: [0.5, null, 2.5], high: [1.5, null, 3.5] })
})

it('a range keeps its least and its greatest in each column', () => {
  const keeper = new PointKeeper(100_000, 100, 1, true)
  for (let row = 0; row < 100_000; row += 1)
    keeper.add(row / 1000, 5, row === 50_003 ? -7 : 4, row === 50_007 ? 70 : 6)
  keeper.end()
  expect(Math.min(...(keeper.range?.low ?? []).map(Number))).toBe(-7)
  expect(Math.max(...(keeper.range?.high ?? []).map(Number))).toBe(70)
  expect(keeper.seconds.length).toBeLessThanOrEqual(10_001)
})
