import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frontOf, GrowingFront } from '../../../shared-engine/search/pareto.ts'

type Point = readonly [number, number]

const places = (points: readonly Point[]) =>
  frontOf(
    points.map(([one]) => one),
    points.map(([, other]) => other),
    points.length,
  )

/** By the definition: no other is no worse in both and better in one. O(n²). */
function plainFront(points: readonly Point[]): number[] {
  const beats = (one: Point, other: Point) =>
    one[0] <= other[0] && one[1] <= other[1] && (one[0] < other[0] || one[1] < other[1])
  return points.flatMap((point, place) => (points.some((other) => beats(other, point)) ? [] : [place]))
}

const ascending = (list: readonly number[]) => list.toSorted((one, other) => one - other)

/** f₁ = x₁ and f₂ = (1 + x₂)/x₁, both to be least; 0.1 ≤ x₁ ≤ 1, 0 ≤ x₂ ≤ 5. */
const exercise = ([x1, x2]: Point): Point => [x1, (1 + x2) / x1]

describe('the front', () => {
  // Source: K. Deb, Multi-Objective Optimization using Evolutionary Algorithms (2001), the two-aim exercise that the
  // book works by hand, its first population of six: 1, 3 and 5 are the best front. Population written from memory.
  it('of a textbook population', () => {
    const population: Point[] = [
      [0.31, 0.89],
      [0.43, 1.92],
      [0.22, 0.56],
      [0.59, 3.63],
      [0.66, 1.41],
      [0.83, 2.51],
    ]
    expect(places(population.map(exercise)).map((place) => place + 1)).toEqual([3, 1, 5])
  })

  // The same source: the whole front of the exercise is f₁ f₂ = 1, where x₂ = 0.
  it('of the same exercise is its known curve', () => {
    const grid = Array.from({ length: 40 }, (_, at) => 0.1 + (0.9 * at) / 39)
    const points = grid.flatMap((x1) => [0, 0.01, 1, 5].map((x2): Point => exercise([x1, x2])))
    const front = places(points).map((place) => points[place] ?? [0, 0])
    expect(front).toHaveLength(grid.length)
    for (const [one, other] of front) expect(Math.abs(one * other - 1)).toBeLessThan(1e-15) // two roundings
  })

  it('is what its definition says, equal points and all', () => {
    const few = fc.integer({ min: 0, max: 12 }) // few values, so that many are equal
    const some = fc.oneof(
      fc.array(fc.tuple(few, few), { maxLength: 60 }),
      fc.array(fc.tuple(fc.double({ noNaN: true }), fc.double({ noNaN: true })), { maxLength: 60 }),
    )
    fc.assert(
      fc.property(some, (points) => {
        expect(ascending(places(points))).toEqual(plainFront(points))
      }),
    )
  })

  it('does not change when what it beat is taken away, or when it is taken again', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(50), fc.nat(50)), { minLength: 1, maxLength: 80 }), (points) => {
        const front = places(points).map((place): Point => points[place] ?? [0, 0])
        expect(places(front)).toHaveLength(front.length)
      }),
    )
  })
})

describe('a growing front', () => {
  it('ends the same whatever came first, past the size at which it is thinned', () => {
    // Invented: an arc with points above it, in two orders; 20,000 of them, more than are gathered before thinning.
    const points = Array.from({ length: 20_000 }, (_, at): Point => {
      const angle = ((at * 7919) % 20_000) / 20_000
      const above = at % 3 === 0 ? 0 : ((at * 31) % 97) / 97
      return [angle + above, (1 - angle) ** 2 + above]
    })
    const grown = (order: readonly number[]) => {
      const front = new GrowingFront()
      for (const at of order) front.add(points[at]?.[0] ?? 0, points[at]?.[1] ?? 0, at)
      front.settle()
      return [...front.index.subarray(0, front.count)]
    }
    const order = points.map((_, at) => at)
    const index = grown(order)
    expect(grown(order.toReversed())).toEqual(index)
    expect(ascending(index)).toEqual(ascending(places(points)))
  })
})
