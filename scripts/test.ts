import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { run as build } from './build.ts'
import { runTool } from './child.ts'
import { prepareMachine } from './machine.ts'
import { countsOfPlaywright, countsOfVitest, sum, type Counts } from './counts.ts'
import { run as typecheck } from './typecheck.ts'

const reports = 'test-results'

/** Each check of the whole project; all run, whatever fails before. A check without a report counts as one test. */
interface Check {
  readonly name: string
  readonly run: () => Promise<Counts>
}

const one = (code: number): Counts => ({ passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 })

const notRun: string[] = []

const checks: readonly Check[] = [
  { name: 'types', run: async () => one(await typecheck()) },
  { name: 'lint', run: async () => one(await runTool('eslint/bin/eslint.js', ['.', '--max-warnings', '0'])) },
  {
    name: 'format',
    run: async () => one(await runTool('prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.'])),
  },
  { name: 'build', run: async () => one(await build([])) },
  { name: 'tests in Node', run: testInNode },
  { name: 'tests in window and browser', run: testInWindows },
]

/** `npm test`: everything, one line with all counts at the end, and a code that is not 0 where anything failed. */
export async function run(): Promise<number> {
  rmSync(reports, { recursive: true, force: true })
  mkdirSync(reports, { recursive: true })
  const results: { name: string; counts: Counts; seconds: number }[] = []
  for (const { name, run } of checks) {
    console.log(`\n== ${name}`)
    const began = Date.now()
    results.push({ name, counts: await guarded(run), seconds: (Date.now() - began) / 1000 })
  }
  console.log('')
  for (const { name, counts, seconds } of results) {
    console.log(`${name.padEnd(30)} ${lineOf(counts)} (${seconds.toFixed(0)} s)`)
  }
  for (const what of notRun) console.log(`Not run: ${what}.`)
  const total = sum(results.map(({ counts }) => counts))
  console.log(lineOf(total))
  return total.failed === 0 ? 0 : 1
}

const lineOf = ({ passed, failed, skipped }: Counts) =>
  `${passed} passed, ${failed} failed, ${skipped} skipped`

async function guarded(run: () => Promise<Counts>): Promise<Counts> {
  try {
    return await run()
  } catch (thrown) {
    console.error(thrown)
    return one(1)
  }
}

async function testInNode(): Promise<Counts> {
  const file = path.join(reports, 'vitest.json')
  const words = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const code = await runTool('vitest/vitest.mjs', words)
  return countsOfVitest(readReport(file), code)
}

async function testInWindows(): Promise<Counts> {
  const { lacks, env } = await prepareMachine()
  notRun.push(...lacks)
  // Not in test-results: Playwright empties that folder when it begins.
  const file = path.join('node_modules', '.cache', 'pitchline', 'playwright.json')
  rmSync(file, { force: true })
  const code = await runTool('@playwright/test/cli.js', ['test', '--reporter=list,json'], {
    ...env,
    PLAYWRIGHT_JSON_OUTPUT_NAME: path.resolve(file),
  })
  return countsOfPlaywright(readReport(file), code)
}

function readReport(file: string): unknown {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null
}
