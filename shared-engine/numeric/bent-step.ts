/**
 * Step towards a root of a function that bends: Halley's.
 *
 * Δ = −f/f′ / (1 − f f″/(2 f′²)); the miss after it is of the order of its cube.
 *
 * @param miss f
 * @param slope f′, not 0
 * @param bend f″
 * @returns what to add to the place; Newton's −f/f′ where the bend is 0
 * *Source:* any text on numerical analysis; exact where the function is (a + b x)/(c + d x).
 * @example bentStep(2 * 2 - 2, 2 * 2, 2) // -0.5714
 */
export function bentStep(miss: number, slope: number, bend: number): number {
  return (-2 * miss * slope) / (2 * slope * slope - miss * bend)
}
