import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { run as build } from './build.ts'
import { runHeld, runTool } from './child.ts'
import { sideBySide } from './lanes.ts'
import { prepareMachine } from './computer.ts'
import { countsOfPlaywright, countsOfVitest, sum, type Counts } from './counts.ts'

const reports = 'test-results'

/** A check of the whole project; all run, whatever fails before. One without a report counts as one test. */
interface Check {
  readonly name: string
  readonly run: () => Promise<Counts>
}

interface Result {
  readonly name: string
  readonly counts: Counts
  readonly seconds: number
}

const one = (code: number): Counts => ({ passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 })

const notRun: string[] = []

const held = (name: string, script: string, words: readonly string[]): Check => ({
  name,
  run: async () => one(await runHeld(script, words)),
})

/** These only read the sources, and run side by side; each shows what it has to say in one piece. */
const readings: readonly Check[] = [
  held('types', 'scripts/run.js', ['typecheck']),
  held('lint', 'node_modules/eslint/bin/eslint.js', ['.', '--max-warnings', '0']),
  held('format', 'node_modules/prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']),
]

/** These use both cores each, and run one after the other. */
const runs: readonly Check[] = [
  { name: 'build', run: async () => one(await build([])) },
  { name: 'tests in Node', run: testInNode },
  { name: 'tests in window and browser', run: testInWindows },
]

/** `npm test`: everything, one line with all counts at the end, and a code that is not 0 where anything failed. */
export async function run(): Promise<number> {
  rmSync(reports, { recursive: true, force: true })
  mkdirSync(reports, { recursive: true })
  console.log(`\n== ${readings.map(({ name }) => name).join(', ')}`)
  const results = await sideBySide(readings.map((check) => () => resultOf(check)))
  for (const check of runs) {
    console.log(`\n== ${check.name}`)
    results.push(await resultOf(check))
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

async function resultOf({ name, run }: Check): Promise<Result> {
  const began = Date.now()
  const counts = await run().catch((thrown: unknown) => {
    console.error(thrown)
    return one(1)
  })
  if (counts.failed > 0) console.log(`${name}: failed`)
  return { name, counts, seconds: (Date.now() - began) / 1000 }
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
