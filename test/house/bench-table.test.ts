import { describe, expect, it } from 'vitest'
import { rowsOf, withRun, type BenchRun, type Measured } from '../../scripts/bench-table.ts'

const run: BenchRun = { day: '2026-02-01', commit: 'abc1234', machine: 'linux x64, 2 cores, Node 20.19.0' }
const check: Measured = {
  name: 'check, start to exit',
  unit: 'ms',
  better: 'less',
  median: 100,
  low: 90,
  high: 120,
}
const rate: Measured = { name: 'Evaluations', unit: 'M/s', better: 'more', median: 2, low: 1.9, high: 2.1 }

/** What stands in the column of the cost, table by table, row by row. */
const costs = (page: string): string[] =>
  page
    .split('\n')
    .filter((line) => line.startsWith('| 2026'))
    .map((line) => line.split('|')[5]?.trim() ?? '')

const after = (page: string, measured: Measured, changed: Partial<BenchRun> = {}): string =>
  withRun(page, rowsOf([measured], { ...run, ...changed }))

describe('the page of kept benches', () => {
  const first = withRun('', rowsOf([check, rate], run))

  it('has a table for each number: day, commit, median, spread, machine', () => {
    expect(first).toContain('## check, start to exit (ms)')
    expect(first).toContain(
      '| 2026-02-01 | abc1234 | 100 | 90 to 120 |  | linux x64, 2 cores, Node 20.19.0 |',
    )
    expect(first).toContain('## Evaluations (M/s)')
    expect(costs(first)).toEqual(['', ''])
  })

  it('keeps the rows before, and adds below', () => {
    const page = after(first, { ...check, median: 105 }, { commit: 'def5678' })
    expect(page.match(/^\| 2026.*$/gm)?.map((line) => line.split('|')[2]?.trim())).toEqual([
      'abc1234',
      'def5678',
      'abc1234',
    ])
    expect(costs(page)).toEqual(['', '1.05', ''])
  })

  it('marks what became slower: a longer time, a lower rate', () => {
    expect(costs(after(first, { ...check, median: 150 }))[1]).toBe('**1.50 slower**')
    expect(costs(after(first, { ...rate, median: 1.6 }))[2]).toBe('**1.25 slower**')
    expect(costs(after(first, { ...rate, median: 2.5 }))[2]).toBe('0.80')
  })

  it('compares nothing across machines', () => {
    expect(
      costs(after(first, { ...check, median: 500 }, { machine: 'linux arm64, 8 cores, Node 22.1.0' }))[1],
    ).toBe('')
  })
})
