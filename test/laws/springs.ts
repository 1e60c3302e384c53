import fc from 'fast-check'
import { setLoad, Sharing } from '../../shared-engine/track/sharing.ts'

/** Rows of teeth under a load; SI. */
export interface Rows {
  readonly engaged: number
  readonly stiffness: number
  readonly loop: number
  readonly pitch: number
  readonly error: number
  readonly pull: number
  readonly slack: number
}

/** Solves a small dense system by elimination with pivots. */
export function solved(matrix: number[][], right: number[]): number[] {
  const size = right.length
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0])
  for (let column = 0; column < size; column += 1) {
    const pivot = rows
      .slice(column)
      .reduce(
        (best, row, at) =>
          Math.abs(row[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0) ? column + at : best,
        column,
      )
    const [top, other] = [rows[pivot] ?? [], rows[column] ?? []]
    rows[column] = top
    rows[pivot] = other
    for (let row = 0; row < size; row += 1) {
      const lead = top[column] ?? 1
      const factor = row === column ? 0 : ((rows[row] ?? [])[column] ?? 0) / lead
      if (factor !== 0) rows[row] = (rows[row] ?? []).map((value, at) => value - factor * (top[at] ?? 0))
    }
  }
  return rows.map((row, index) => (row[size] ?? 0) / (row[index] ?? 1))
}

/** A number evenly in its logarithm, ends as powers of ten. */
export const power = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((at) => 10 ** at)

/** Random rows: stiff and soft loops, pitches too long and too short. */
export const rows: fc.Arbitrary<Rows> = fc.record({
  engaged: fc.integer({ min: 1, max: 12 }),
  stiffness: power(3, 7),
  loop: power(3, 6),
  pitch: power(-3, -1),
  error: fc.constantFrom(0, 1e-6, -1e-6, 1e-5, -1e-5, 1e-4, -1e-4),
  pull: power(0, 3.5),
  slack: fc.oneof(fc.constant(0), power(0, 3)),
})

/** The engine's closed form under the same load. */
export function loaded({ engaged, stiffness, loop, pitch, error, pull, slack }: Rows): Sharing {
  const sharing = new Sharing()
  sharing.known = true
  sharing.halfSine = Math.sqrt((stiffness * pitch) / loop) / 2
  sharing.decay = 2 * Math.asinh(sharing.halfSine)
  sharing.errorTension = (error * loop) / pitch
  setLoad(sharing, engaged, pull, slack)
  return sharing
}
