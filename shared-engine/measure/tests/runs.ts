import type { Bench } from '../bench.ts'

/** Places of the rows of each run, in the order of the rows; all of them where no run is named. */
export function runsOf(bench: Bench): readonly (readonly number[])[] {
  const runs = new Map<number, number[]>()
  const names = bench.column('run')
  for (let row = 0; row < bench.rows; row += 1) {
    const name = names[row] ?? 0
    const rows = runs.get(name)
    if (rows === undefined) runs.set(name, [row])
    else rows.push(row)
  }
  return [...runs.values()]
}

/** 1 in the rows of one run, 0 elsewhere: a start of its own for each. */
export function startColumns(bench: Bench): readonly (readonly number[])[] {
  return runsOf(bench).map((rows) => {
    const column = new Array<number>(bench.rows).fill(0)
    for (const row of rows) column[row] = 1
    return column
  })
}

/** ∫ values dt from the first row of each run, by the trapezoid. */
export function integralsOf(bench: Bench, values: readonly number[]): readonly number[] {
  const seconds = bench.column('seconds')
  const integrals = new Array<number>(bench.rows).fill(0)
  for (const rows of runsOf(bench)) {
    let sum = 0
    rows.forEach((row, at) => {
      const before = rows[at - 1]
      if (before !== undefined) {
        const span = (seconds[row] ?? 0) - (seconds[before] ?? 0)
        sum += (span * ((values[row] ?? 0) + (values[before] ?? 0))) / 2
      }
      integrals[row] = sum
    })
  }
  return integrals
}
