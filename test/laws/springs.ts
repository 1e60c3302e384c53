import fc from 'fast-check'
import { rowSpringsOf, type RowSprings } from '../../shared-engine/geometry/row-springs.ts'
import { setLoad, Sharing } from '../../shared-engine/track/sharing.ts'
import { evenly } from '../fixtures/evenly.ts'

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

/** Row from `column` on whose entry there is largest. */
function pivotOf(rows: readonly Float64Array[], column: number): number {
  let best = column
  for (let row = column + 1; row < rows.length; row += 1) {
    if (Math.abs(rows[row]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = row
  }
  return best
}

/** Solves a small dense system by elimination with pivots. */
export function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const size = right.length
  const rows = matrix.map((row, index) => Float64Array.of(...row, right[index] ?? 0))
  for (let column = 0; column < size; column += 1) {
    const pivot = pivotOf(rows, column)
    const top = rows[pivot] ?? new Float64Array()
    rows[pivot] = rows[column] ?? top
    rows[column] = top
    for (const row of rows) {
      const factor = row === top ? 0 : (row[column] ?? 0) / (top[column] ?? 1)
      if (factor !== 0)
        for (let at = column; at <= size; at += 1) row[at] = (row[at] ?? 0) - factor * (top[at] ?? 0)
    }
  }
  return rows.map((row, index) => (row[size] ?? 0) / (row[index] ?? 1))
}

/** A number evenly in its logarithm, ends as powers of ten. */
export const power = (low: number, high: number) => evenly(low, high).map((at) => 10 ** at)

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

/** The engine's springs of these rows. */
export function springsOf({ stiffness, loop, pitch, error, engaged }: Rows): RowSprings {
  return rowSpringsOf(stiffness, loop, pitch, error, engaged)
}

/** The engine's closed form under the same load. */
export function loaded(at: Rows): Sharing {
  const sharing = new Sharing()
  setLoad(sharing, springsOf(at), at.pull, at.slack)
  return sharing
}
