import type { Column } from './log.ts'

/** The middle of values; of an even number, the mean of the two in the middle; NaN of none. */
export function medianOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort()
  const half = sorted.length >> 1
  if (sorted.length % 2 === 1) return sorted[half] ?? NaN
  return ((sorted[half - 1] ?? NaN) + (sorted[half] ?? NaN)) / 2
}

/** |x₋ − 2x + x₊| of three rows in a row that all have the channel, within segments. */
function secondDifferences(columns: readonly Column[]): number[] {
  const differences: number[] = []
  for (const column of columns) {
    for (let row = 1; row + 1 < column.length; row += 1) {
      const [before, here, after] = [column[row - 1], column[row], column[row + 1]]
      if (typeof before === 'number' && typeof here === 'number' && typeof after === 'number')
        differences.push(Math.abs(before - 2 * here + after))
    }
  }
  return differences
}

/** Least step between the values of a channel; 0 where most of them are different anyway. */
function stepOf(values: readonly number[]): number {
  const distinct = Float64Array.from(new Set(values)).sort()
  if (distinct.length * 2 >= values.length) return 0
  let least = Infinity
  for (let at = 1; at < distinct.length; at += 1)
    least = Math.min(least, (distinct[at] ?? 0) - (distinct[at - 1] ?? 0))
  return least < Infinity ? least : 0
}

/** Noise of a channel, and whether it comes from the scatter of its values rather than from its step alone. */
export interface Noise {
  readonly sigma: number
  /** The median second difference is not 0: errors of neighbours are independent, and means get better. */
  readonly scatters: boolean
}

/**
 * Standard deviation of a channel's noise: what second differences leave of a smooth signal, at least the step of the
 * values over √12 and a millionth of the largest.
 *
 * σ = 1.4826 · median|x₋ − 2x + x₊|/√6.
 *
 * *Source:* T. Gasser, L. Sroka and C. Jennen-Steinmetz, Biometrika 73 (1986), with the median for its robustness; 1.4826
 * is that of the median absolute deviation of a normal distribution.
 */
export function noiseOf(columns: readonly Column[]): Noise {
  const values = columns.flatMap((column) => column.filter((value) => value !== null))
  const middle = medianOf(secondDifferences(columns))
  const scatter = (1.4826 * (Number.isNaN(middle) ? 0 : middle)) / Math.sqrt(6)
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const sigma = Math.max(scatter, stepOf(values) / Math.sqrt(12), 1e-6 * largest)
  return { sigma, scatters: middle > 0 }
}
