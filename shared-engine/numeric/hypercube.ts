import { randomAt, randomStream, shuffled } from './random.ts'

/** A Latin hypercube: samples in the unit cube, made on demand one by one. */
interface Hypercube {
  readonly samples: number
  readonly dimensions: number
  /** Point `sample` of the cube, each coordinate in [0, 1). */
  readonly at: (sample: number) => Float64Array
}

/**
 * Latin-hypercube samples: in each dimension every one of `samples` equal slices holds exactly one point, at a random
 * place in it.
 *
 * A point depends on the seed, its number and its dimension alone, so that any thread can make any chunk of the cube and
 * all chunks together are the same however they were cut.
 *
 * @param seed whole number, 0 to 2^53 − 1; part of the result's description
 * @param samples 1 to 1,000,000
 * @param dimensions 0 or more
 *
 * *Source:* McKay, Beckman and Conover, *A comparison of three methods for selecting values of input variables*,
 * Technometrics 21 (1979).
 *
 * @example latinHypercube(1, 2, 1).at(0)[0] < 0.5 !== latinHypercube(1, 2, 1).at(1)[0] < 0.5 // true
 */
export function latinHypercube(seed: number, samples: number, dimensions: number): Hypercube {
  const slices = Array.from({ length: dimensions }, (_, dimension) =>
    shuffled(randomStream(seed, dimension), samples),
  )
  return {
    samples,
    dimensions,
    at: (sample) =>
      Float64Array.from(slices, (slice, dimension) => {
        const place = randomAt(seed, dimension, sample)
        // A place just below 1 can round up to the next slice's edge; the last edge is outside the cube.
        return Math.min(((slice[sample] as number) + place) / samples, 1 - Number.EPSILON)
      }),
  }
}
