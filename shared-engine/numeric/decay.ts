/** Steps of 2 that the table divides each halving into. */
const parts = 32
const part = Math.LN2 / parts
/** `part` in two numbers: the first has so few digits that its multiples are exact. */
const partHigh = Math.fround(part)
const partLow = part - partHigh

/** 2^(−j/32) and 2^(−n). */
const fractions = Float64Array.from({ length: parts }, (_, j) => 2 ** (-j / parts))
const halvings = Float64Array.from({ length: 64 }, (_, n) => 2 ** -n)

/**
 * What is left of a quantity that dies away.
 *
 * e^(−x): x = k ln 2/32 + r, so 2^(−k/32) from a table times the series of e^(−r), |r| ≤ 0.011. Half of the time of
 * the built-in exponential, which is called and not put in line; a run on soil asks for fifty of them.
 *
 * @param x 0 to 44
 * @returns e^(−x), to 2e-15 of itself, or to 2e-16 of 1
 * *Source:* range reduction and series, any text on elementary functions; compared with the built-in one in its test.
 * @example decayOf(1) // 0.36787944
 */
export function decayOf(x: number): number {
  const steps = (x / part + 0.5) | 0
  const r = steps * partHigh - x + steps * partLow
  const series = 1 + r * (1 + r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r / 720)))))
  return (halvings[steps >> 5] ?? 0) * (fractions[steps & 31] ?? 0) * series
}
