/** What a runner found. */
export interface Counts {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
}

export function sum(all: readonly Counts[]): Counts {
  const total = (of: keyof Counts) => all.reduce((so, counts) => so + counts[of], 0)
  return { passed: total('passed'), failed: total('failed'), skipped: total('skipped') }
}

/** A runner that failed without a failed test (a file that does not load, no report at all) still counts as one. */
function honest(counts: Counts, code: number): Counts {
  return code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts
}

const none: Counts = { passed: 0, failed: 0, skipped: 0 }

/** Counts of vitest's JSON report. */
export function countsOfVitest(report: unknown, code: number): Counts {
  if (!isRecord(report)) return { ...none, failed: 1 }
  const skipped = numberAt(report, 'numPendingTests') + numberAt(report, 'numTodoTests')
  return honest(
    { passed: numberAt(report, 'numPassedTests'), failed: numberAt(report, 'numFailedTests'), skipped },
    code,
  )
}

/** Counts of Playwright's JSON report. A test that passed only when tried again counts as failed. */
export function countsOfPlaywright(report: unknown, code: number): Counts {
  if (!isRecord(report) || !isRecord(report['stats'])) return { ...none, failed: 1 }
  const { stats } = report
  const failed = numberAt(stats, 'unexpected') + numberAt(stats, 'flaky')
  return honest({ passed: numberAt(stats, 'expected'), failed, skipped: numberAt(stats, 'skipped') }, code)
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}

function numberAt(record: Record<string, unknown>, key: string): number {
  const value = record[key]
  if (typeof value !== 'number') throw new Error(`the report has no number ${key}`)
  return value
}
