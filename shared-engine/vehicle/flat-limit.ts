import type { ThrustLine } from './thrust-line.ts'

/** A limited piece so flat that belt speed can't be told from thrust: there slip is one number. */
export function isFlat(line: ThrustLine): boolean {
  return line.cornerSpeed > 0 && line.limitedSlope * line.cornerSpeed < 1e-8 * line.limitedStart
}
