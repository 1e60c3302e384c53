/** Steps of 2 that the table divides each halving into, and the power of two that this is. */
const parts = 256
const partBits = 8
const part = Math.LN2 / parts
/** `part` in two numbers: the first has so few digits that its multiples are exact. */
const partHigh = Math.fround(part)
const partLow = part - partHigh
const perPart = 1 / part
const third = 1 / 6
const fourth = 1 / 24

/** 2^(−j/256) and 2^(−n). */
const fractions = Float64Array.from({ length: parts }, (_, j) => 2 ** (-j / parts))
const halvings = Float64Array.from({ length: 64 }, (_, n) => 2 ** -n)

/**
 * What is left of a quantity that dies away.
 *
 * e^(−x): x = k ln 2/256 + r, so 2^(−k/256) from a table times the series of e^(−r), |r| ≤ 0.0014. Quicker than the
 * built-in exponential, which is called and not put in line; an evaluation on soil asks for about thirty of them.
 *
 * @param x 0 to 44
 * @returns e^(−x), to 2e-15 of itself, or to 2e-16 of 1
 * *Source:* range reduction and series, any text on elementary functions; compared with the built-in one in its test.
 * @example decayOf(1) // 0.36787944
 */
export function decayOf(x: number): number {
  const steps = (x * perPart + 0.5) | 0
  const r = steps * partHigh - x + steps * partLow
  const square = r * r
  const series = 1 + (r + square * (0.5 + r * third + square * fourth))
  return (halvings[steps >> partBits] ?? 0) * (fractions[steps & (parts - 1)] ?? 0) * series
}
