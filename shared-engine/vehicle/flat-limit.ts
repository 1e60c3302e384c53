import type { ThrustLine } from './thrust-line.ts'

/**
 * A limited piece so flat that belt speed can't be told from thrust: there slip is one number. What that leaves out is of
 * the order of the square of 1e-6; told from thrust, a speed of a thousandth of the corner's would lose all but seven
 * digits.
 *
 * *Source:* a bound of rounding, worked out here.
 */
export function isFlat(line: ThrustLine): boolean {
  return line.cornerSpeed > 0 && line.limitedSlope * line.cornerSpeed < 1e-6 * line.limitedStart
}
