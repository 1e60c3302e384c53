/** One test and how long it took. */
export interface Timed {
  readonly name: string
  readonly seconds: number
}

/** How many of them `npm test` names. */
export const slowestCount = 10

/** The tests that took longest, the longest first. */
export function slowest(all: readonly Timed[], count = slowestCount): Timed[] {
  return [...all].sort((one, other) => other.seconds - one.seconds).slice(0, count)
}

interface VitestReport {
  readonly testResults?: readonly {
    readonly name: string
    readonly assertionResults: readonly { readonly fullName: string; readonly duration?: number | null }[]
  }[]
}

/** Times of vitest's JSON report; a test that was left out has none. */
export function timesOfVitest(report: unknown, root: string): Timed[] {
  const files = (report as VitestReport | null)?.testResults ?? []
  return files.flatMap(({ name, assertionResults }) =>
    assertionResults.map(({ fullName, duration }) => ({
      name: `${name.replace(root, '').replace(/^[/\\]/, '')} › ${fullName}`,
      seconds: (duration ?? 0) / 1000,
    })),
  )
}

interface PlaywrightSuite {
  readonly suites?: readonly PlaywrightSuite[]
  readonly specs?: readonly {
    readonly title: string
    readonly file: string
    readonly tests: readonly {
      readonly projectName: string
      readonly results: readonly { readonly duration: number }[]
    }[]
  }[]
}

/** Times of Playwright's JSON report, second tries added. */
export function timesOfPlaywright(report: unknown): Timed[] {
  const { suites = [], specs = [] } = (report ?? {}) as PlaywrightSuite
  const own = specs.flatMap(({ title, file, tests }) =>
    tests.map(({ projectName, results }) => ({
      name: `[${projectName}] ${file} › ${title}`,
      seconds: results.reduce((sum, { duration }) => sum + duration, 0) / 1000,
    })),
  )
  return [...own, ...suites.flatMap(timesOfPlaywright)]
}
