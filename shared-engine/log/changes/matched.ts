import type { Stretch } from './stretch.ts'

/** One stretch of one of two runs: what is compared, and under which conditions. */
export interface Row {
  readonly run: 0 | 1
  readonly window: number
  readonly value: number
  /** Conditions that have to be alike, in the order of their cells. */
  readonly conditions: readonly number[]
  readonly means: Stretch['means']
}

/** Least and most of a condition in one run. */
export interface Reach {
  readonly from: number
  readonly to: number
}

/** Rows of both runs under like conditions, each with its cell. */
interface Matched {
  readonly rows: readonly Row[]
  readonly cells: readonly string[]
}

/** Why two runs have too little in common; `condition`: the first that does not overlap, null where each does by itself. */
interface Apart {
  readonly condition: number | null
  readonly reaches: readonly [Reach, Reach] | null
}

/** A condition: the width of its cells; null: a sixth of what both runs reach, at least 3 % of the size. */
type CellWidth = number | null

/** Stretches that each run has to have under like conditions. *Source:* common practice, no source. */
const leastStretches = 8
const parts = 6
const leastPart = 0.03

/**
 * The stretches of two runs that ran under like conditions: those in cells of all conditions in which both have some.
 *
 * *Source:* comparison within strata, Cochran, *Biometrics* 24 (1968), from memory; the widths: common practice.
 */
export function matchedOf(rows: readonly Row[], widths: readonly CellWidth[]): Matched | Apart {
  const cells = rows.map(() => [] as number[])
  for (const [at, width] of widths.entries()) {
    const reaches = [0, 1].map((run) => reachOf(rows, at, run)) as [Reach, Reach]
    const low = Math.max(reaches[0].from, reaches[1].from)
    const high = Math.min(reaches[0].to, reaches[1].to)
    const size = width ?? Math.max((high - low) / parts, leastPart * Math.max(Math.abs(low), Math.abs(high)))
    // What is less than a cell apart is still alike.
    if (!(high - low > -size)) return { condition: at, reaches }
    const zero = Math.min(low, high) - size / 2
    const end = Math.max(low, high) + size / 2
    rows.forEach(({ conditions }, place) => {
      const value = conditions[at] ?? NaN
      cells[place]?.push(value >= zero && value <= end ? Math.floor((value - zero) / size) : NaN)
    })
  }
  const names = cells.map((cell) => (cell.some(Number.isNaN) ? '' : cell.join(' ')))
  const inRun = (run: 0 | 1) => new Set(names.filter((_, at) => rows[at]?.run === run))
  const [before, after] = [inRun(0), inRun(1)]
  const both = (name: string) => name !== '' && before.has(name) && after.has(name)
  const kept = rows.filter((_, at) => both(names[at] ?? ''))
  const enough = [0, 1].every((run) => kept.filter((row) => row.run === run).length >= leastStretches)
  return enough ? { rows: kept, cells: names.filter(both) } : { condition: null, reaches: null }
}

function reachOf(rows: readonly Row[], at: number, run: number): Reach {
  let [from, to] = [Infinity, -Infinity]
  for (const row of rows) {
    if (row.run !== run) continue
    from = Math.min(from, row.conditions[at] ?? NaN)
    to = Math.max(to, row.conditions[at] ?? NaN)
  }
  return { from, to }
}

/** Numbers less the mean of their cell. */
export function lessCellMeans(values: readonly number[], cells: readonly string[]): readonly number[] {
  const sums = new Map<string, { sum: number; count: number }>()
  values.forEach((value, at) => {
    const cell = sums.get(cells[at] ?? '') ?? { sum: 0, count: 0 }
    sums.set(cells[at] ?? '', { sum: cell.sum + value, count: cell.count + 1 })
  })
  return values.map((value, at) => {
    const { sum, count } = sums.get(cells[at] ?? '') ?? { sum: 0, count: 1 }
    return value - sum / count
  })
}
