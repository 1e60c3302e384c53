import { expect, test } from 'vitest'
import { Shortlist } from '../../../shared-engine/search/rows.ts'
import { addTally, emptyTally } from '../../../shared-engine/search/tally.ts'

const key = Float64Array.of(1, 2)

/** The candidate that stands for all of one row, by the order in which they came. */
function shownOf(candidates: readonly (readonly [index: number, margin: number])[]): number | undefined {
  const list = new Shortlist(3)
  for (const [index, margin] of candidates) list.add(key, index, margin)
  expect(list.rows).toHaveLength(1)
  return list.rows[0]?.index
}

test('of candidates whose margins differ by rounding alone the first stands for the row, in whatever order they come', () => {
  // As seen between two compilers: the last bits of 0.3.
  const equal = [
    [4, 0.3],
    [2, 0.1 + 0.2],
    [7, 0.3 - 2 ** -54],
  ] as const
  expect(shownOf(equal)).toBe(2)
  expect(shownOf(equal.toReversed())).toBe(2)
})

test('the one with more in hand stands for the row, and one without a margin for none that has one', () => {
  expect(
    shownOf([
      [1, 0.2],
      [5, 0.25],
      [3, -Infinity],
    ]),
  ).toBe(5)
  expect(
    shownOf([
      [3, -Infinity],
      [2, -Infinity],
    ]),
  ).toBe(2)
})

test('of candidates that come as close to a limit but for rounding, the first is named, in whatever order parts come', () => {
  // As seen between Node 20 and 24: of two equal candidates one named the 54 teeth and the other the 60.
  const parts = [
    [4, 0.3],
    [2, 0.1 + 0.2],
    [7, 0.3 - 2 ** -54],
    [9, 0.2],
  ] as const
  const namedOf = (all: readonly (readonly [index: number, closeness: number])[]) => {
    const tally = emptyTally(1)
    for (const [index, closeness] of all) {
      const part = emptyTally(1)
      part.best[0] = closeness
      part.bestIndex[0] = index
      part.closest = closeness
      part.closestIndex = index
      addTally(tally, part)
    }
    return [tally.bestIndex[0], tally.closestIndex]
  }
  expect(namedOf(parts)).toEqual([2, 2])
  expect(namedOf(parts.toReversed())).toEqual([2, 2])
})
