import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { latinHypercube } from '../../../shared-engine/numeric/hypercube.ts'
import { randomAt, randomStream, shuffled, xoshiro } from '../../../shared-engine/numeric/random.ts'

test('xoshiro128** from the state 1, 2, 3, 4 gives its published test vector', () => {
  // Reference output of Blackman and Vigna's C code, as kept in the tests of a general-purpose library of generators
  // (rand_xoshiro); from memory.
  const next = xoshiro(Uint32Array.of(1, 2, 3, 4))
  expect(Array.from({ length: 10 }, next)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ])
})

describe('streams', () => {
  const draws = (...names: [number, ...number[]]) => Array.from({ length: 20 }, randomStream(...names))

  test('of the same names are the same, of others differ', () => {
    expect(draws(7, 1, 2)).toEqual(draws(7, 1, 2))
    const all = [
      draws(7),
      draws(8),
      draws(7, 0),
      draws(7, 1),
      draws(7, 0, 0),
      draws(0),
      draws(2 ** 40),
      draws(2 ** 41),
    ]
    expect(new Set(all.map((list) => list[0])).size).toBe(all.length)
  })

  test('are even over [0, 1): chi-squared of 100 cells over 100,000 draws', () => {
    const cells = new Float64Array(100)
    for (let stream = 0; stream < 1000; stream++) {
      const next = randomStream(42, stream)
      for (let draw = 0; draw < 100; draw++) {
        const value = next()
        expect(value >= 0 && value < 1).toBe(true)
        cells[Math.floor(value * 100)] = (cells[Math.floor(value * 100)] as number) + 1
      }
    }
    const chiSquared = cells.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)
    // 99 degrees of freedom: 0.1 % lie outside 57 to 149 (Abramowitz and Stegun, table 26.8, interpolated); the seed is fixed.
    expect(chiSquared).toBeGreaterThan(57)
    expect(chiSquared).toBeLessThan(149)
  })
})

test('single draws of neighbouring places are even and do not follow each other', () => {
  let sum = 0
  let product = 0
  const count = 20_000
  for (let place = 0; place < count; place++) {
    const value = randomAt(9, 0, place) - 0.5
    sum += value
    product += value * (randomAt(9, 0, place + 1) - 0.5)
    expect(value >= -0.5 && value < 0.5).toBe(true)
  }
  // Four standard errors of a uniform's mean, √(1/12n), and of the product of two, 1/12 over √n; the seed is fixed.
  expect(Math.abs(sum / count)).toBeLessThan(4 * Math.sqrt(1 / 12 / count))
  expect(Math.abs(product / count)).toBeLessThan(4 / 12 / Math.sqrt(count))
  expect(randomAt(9, 0, 1)).not.toBe(randomStream(9, 0, 1)())
})

test('a shuffle holds every number once', () => {
  expect([...shuffled(randomStream(3), 100)].sort((a, b) => a - b)).toEqual(
    Array.from({ length: 100 }, (_, i) => i),
  )
})

describe('Latin hypercube', () => {
  test('each slice of each dimension holds one point (McKay, Beckman and Conover, 1979, the definition)', () => {
    fc.assert(
      fc.property(
        fc.nat(),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 5 }),
        (seed, samples, dimensions) => {
          const cube = latinHypercube(seed, samples, dimensions)
          for (let dimension = 0; dimension < dimensions; dimension++) {
            const slices = Array.from({ length: samples }, (_, i) =>
              Math.floor((cube.at(i)[dimension] as number) * samples),
            )
            expect(new Set(slices).size).toBe(samples)
          }
        },
      ),
      { numRuns: 30 },
    )
  })

  test('is the same in whatever order and chunks it is made', () => {
    const whole = latinHypercube(11, 40, 3)
    const points = Array.from({ length: 40 }, (_, index) => whole.at(index))
    for (const index of [39, 0, 17, 17]) expect(latinHypercube(11, 40, 3).at(index)).toEqual(points[index])
  })
})
