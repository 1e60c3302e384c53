import { describe, expect, it } from 'vitest'
import { countsOfPlaywright, countsOfVitest, sum } from '../../scripts/counts.ts'

const vitest = { numPassedTests: 5, numFailedTests: 0, numPendingTests: 1, numTodoTests: 1 }
const playwright = { stats: { expected: 3, unexpected: 0, flaky: 0, skipped: 2 } }

describe('the counts that npm test prints', () => {
  it('are those of the reports', () => {
    expect(countsOfVitest(vitest, 0)).toEqual({ passed: 5, failed: 0, skipped: 2 })
    expect(countsOfPlaywright(playwright, 0)).toEqual({ passed: 3, failed: 0, skipped: 2 })
  })

  it('hold a failure where a runner failed without a failed test', () => {
    expect(countsOfVitest(vitest, 1).failed).toBe(1)
    expect(countsOfPlaywright(playwright, 1).failed).toBe(1)
  })

  it('hold a failure where there is no report', () => {
    expect(countsOfVitest(null, 0).failed).toBe(1)
    expect(countsOfPlaywright(null, 0).failed).toBe(1)
  })

  it('count a test that passed only at the second try as failed', () => {
    expect(countsOfPlaywright({ stats: { ...playwright.stats, flaky: 1 } }, 0).failed).toBe(1)
  })

  it('refuse a report without its numbers', () => {
    expect(() => countsOfVitest({ numPassedTests: 5 }, 0)).toThrow('no number')
  })

  it('are summed over all runners', () => {
    const all = [
      { passed: 1, failed: 2, skipped: 3 },
      { passed: 10, failed: 20, skipped: 30 },
    ]
    expect(sum(all)).toEqual({ passed: 11, failed: 22, skipped: 33 })
  })
})
