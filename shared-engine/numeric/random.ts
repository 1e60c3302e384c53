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

/** Folds the numbers of a name into one word; another lane gives another word of the same name. */
function folded(lane: number, seed: number, stream: readonly number[]): number {
  let word = withNumber(Math.imul(lane + 1, golden), seed)
  for (const number of stream) word = withNumber(word, number)
  return word
}

/** Both words of a number go in, so that no two below 2^53 are the same. */
function withNumber(word: number, number: number): number {
  const low = mixed((word ^ (number >>> 0)) + golden)
  return mixed((low ^ (Math.floor(number / 2 ** 32) >>> 0)) + golden)
}

/** 53 bits of two words as a number in [0, 1). */
const fraction = (high: number, low: number) => ((high >>> 5) * 0x4000000 + (low >>> 6)) / 2 ** 53

/**
 * A seeded generator of its own for each place it is wanted in: the same seed and stream numbers give the same numbers,
 * whichever thread draws them and in whatever order the places are visited.
 *
 * @param seed whole number, 0 to 2^53 − 1
 * @param stream whole numbers that name the place, such as dimension and sample
 * @returns draws in [0, 1) with 53 random bits
 *
 * *Source:* Blackman and Vigna, *Scrambled linear pseudorandom number generators*, ACM Trans. Math. Softw. 47 (2021):
 * xoshiro128**; its state is filled by folding the numbers through a 32-bit mixer, each
 * word from a start of its own [assumption: streams of different names do not meet, with 2^128 states to start from].
 *
 * @example randomStream(7, 2)() === randomStream(7, 2)() // true
 */
export function randomStream(seed: number, ...stream: readonly number[]): Random {
  const words = Uint32Array.from({ length: 4 }, (_, lane) => folded(lane, seed, stream))
  // All zero is the one state that the generator cannot leave.
  if (words.every((word) => word === 0)) words[0] = 1
  const next = xoshiro(words)
  return () => fraction(next(), next())
}

/**
 * One draw for a place that needs no more than one: a generator's start without the generator, so that a million places
 * cost no memory. The same names as a stream's give another number than that stream's first.
 *
 * @param seed whole number, 0 to 2^53 − 1
 * @param stream whole numbers that name the place
 * @returns a number in [0, 1) with 53 random bits
 * @example randomAt(7, 2, 5) === randomAt(7, 2, 5) // true
 */
export function randomAt(seed: number, ...stream: readonly number[]): number {
  return fraction(folded(4, seed, stream), folded(5, seed, stream))
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
function randomBelow(random: Random, count: number): number {
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
