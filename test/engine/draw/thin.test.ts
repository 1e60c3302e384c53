import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { thinned } from '../../../shared-engine/draw/thin.ts'

const value = fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { nil: null, freq: 8 })

/** Least and greatest of each column, between gaps counted together. */
function extremes(xs: readonly number[], ys: readonly (number | null)[], columnOf: (x: number) => number) {
  const columns = new Map<number, { least: number; greatest: number }>()
  xs.forEach((x, index) => {
    const y = ys[index]
    if (y === null || y === undefined) return
    const column = Math.floor(columnOf(x))
    const known = columns.get(column) ?? { least: Infinity, greatest: -Infinity }
    columns.set(column, { least: Math.min(known.least, y), greatest: Math.max(known.greatest, y) })
  })
  return columns
}

describe('thinning', () => {
  it('keeps the least and the greatest of every column of pixels', () => {
    fc.assert(
      fc.property(
        // Some hundred points in a few columns: in shorter lists the first and the last of a column are all that there is.
        fc.array(value, { minLength: 200, maxLength: 400, size: 'max' }),
        fc.integer({ min: 1, max: 20 }),
        (ys, width) => {
          const xs = ys.map((_, index) => index)
          const columnOf = (x: number): number => (x / ys.length) * width
          const kept = thinned(xs, ys, columnOf)
          expect(extremes(kept.xs, kept.ys, columnOf)).toEqual(extremes(xs, ys, columnOf))
        },
      ),
    )
  })

  it('keeps a single spike among a million flat points', () => {
    const ys = new Array<number>(1_000_000).fill(1)
    ys[654_321] = 99
    const kept = thinned(
      ys.map((_, index) => index),
      ys,
      (x) => x / 2000,
    )
    expect(Math.max(...kept.ys.map((y) => y ?? 0))).toBe(99)
    expect(kept.xs.length).toBeLessThanOrEqual(4 * 500)
  })

  it('keeps gaps as gaps and the order of points', () => {
    const kept = thinned([0, 1, 2, 3, 4], [1, 2, null, 3, 4], () => 0)
    expect(kept.ys).toEqual([1, 2, null, 3, 4])
    fc.assert(
      fc.property(fc.array(value, { maxLength: 200 }), (ys) => {
        const { xs } = thinned(
          ys.map((_, index) => index),
          ys,
          (x) => x / 7,
        )
        expect([...xs].sort((a, b) => a - b)).toEqual(xs)
      }),
    )
  })
})
