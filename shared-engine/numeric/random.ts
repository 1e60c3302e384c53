/** A source of numbers evenly spread over [0, 1). */
export type Random = () => number

/** 2^32 over the golden ratio: multiples of it spread evenly over all words. */
const golden = 0x9e3779b9

/** Mixes a 32-bit word so that each bit of it decides each bit of the result. */
function mixed(word: number): number {
  let z = word | 0
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad)
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97)
  return (z ^ (z >>> 15)) >>> 0
}

/** The words of a number, so that no two seeds or stream numbers below 2^53 share them. */
const wordsOf = (value: number): readonly [number, number] => [value >>> 0, Math.floor(value / 2 ** 32) >>> 0]

/**
 * A seeded generator of its own for each place it is wanted in: the same seed and stream numbers give the same numbers,
 * whichever thread draws them and in whatever order the places are visited.
 *
 * @param seed whole number, 0 to 2^53 − 1
 * @param stream whole numbers that name the place, such as dimension and sample
 * @returns draws in [0, 1) with 53 random bits
 *
 * *Source:* Blackman and Vigna, *Scrambled linear pseudorandom number generators*, ACM Trans. Math. Softw. 47 (2021):
 * xoshiro128**; its state is filled by folding the numbers through a 32-bit mixer, each word from a start of its own [assumption: streams of different
 * names do not meet, with 2^128 states to start from].
 *
 * @example randomStream(7, 2)() === randomStream(7, 2)() // true
 */
export function randomStream(seed: number, ...stream: readonly number[]): Random {
  const fill = [seed, ...stream].flatMap(wordsOf)
  const words = Uint32Array.from({ length: 4 }, (_, lane) =>
    fill.reduce((word, piece) => mixed((word ^ piece) + golden), Math.imul(lane + 1, golden)),
  )
  // All zero is the one state that the generator cannot leave.
  if (words.every((word) => word === 0)) words[0] = 1
  const next = xoshiro(words)
  return () => ((next() >>> 5) * 0x4000000 + (next() >>> 6)) / 2 ** 53
}

/** The generator itself on four words of state, which it changes; exported for its test against published numbers. */
export function xoshiro(state: Uint32Array): () => number {
  let [s0 = 0, s1 = 0, s2 = 0, s3 = 0] = state
  const rotated = (x: number, k: number) => (x << k) | (x >>> (32 - k))
  return () => {
    const result = Math.imul(rotated(Math.imul(s1, 5), 7), 9) >>> 0
    const shifted = s1 << 9
    s2 ^= s0
    s3 ^= s1
    s1 ^= s2
    s0 ^= s3
    s2 ^= shifted
    s3 = rotated(s3, 11)
    return result
  }
}

/** A whole number from 0 up to but without `count`, without the bias of a plain remainder. */
export function randomBelow(random: Random, count: number): number {
  return Math.floor(random() * count)
}

/** Numbers 0 … count − 1 in random order (Fisher and Yates, as in Knuth, *TAOCP* 2, algorithm 3.4.2 P). */
export function shuffled(random: Random, count: number): Uint32Array {
  const order = Uint32Array.from({ length: count }, (_, index) => index)
  for (let index = count - 1; index > 0; index--) {
    const other = randomBelow(random, index + 1)
    const kept = order[index] as number
    order[index] = order[other] as number
    order[other] = kept
  }
  return order
}
