import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { run as build } from './build.ts'
import { runHeld, runTool } from './child.ts'
import { prepareMachine, type TestMachine } from './computer.ts'
import { countsOfPlaywright, countsOfVitest, sum, type Counts } from './counts.ts'
import { sideBySide } from './lanes.ts'
import { lintCache } from './lint-cache.ts'
import { slowest, timesOfPlaywright, timesOfVitest, type Timed } from './slowest.ts'
import { isBuilt } from './stale.ts'

const reports = 'test-results'

/** What the tools know of files that have not changed since. */
const cache = path.join('node_modules', '.cache', 'pitchline')

/** What a check found, and how long its single tests took. */
interface Found {
  readonly counts: Counts
  readonly times: readonly Timed[]
}

/** A check of the whole project; all run, whatever fails before. One without a report counts as one test. */
interface Check {
  readonly name: string
  readonly run: () => Promise<Found>
}

interface Result extends Found {
  readonly name: string
  readonly seconds: number
}

const one = (code: number): Found => ({
  counts: { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 },
  times: [],
})

const held = (name: string, script: string, words: readonly string[]): Check => ({
  name,
  run: async () => one(await runHeld(script, words)),
})

/** A build is made of sources that have changed since the last one: `npm ci` has made one. */
const building: Check = { name: 'build', run: async () => one(isBuilt(process.cwd()) ? 0 : await build([])) }

/** These only read the sources; each shows what it has to say in one piece. */
const readings: readonly Check[] = [
  held('types', 'scripts/run.js', ['typecheck']),
  held('lint', 'node_modules/eslint/bin/eslint.js', [
    ...['.', '--max-warnings', '0'],
    ...['--cache', '--cache-strategy', 'content', '--cache-location', lintCache(process.cwd(), cache)],
  ]),
  held('format', 'node_modules/prettier/bin/prettier.cjs', [
    ...['--check', '--log-level', 'warn'],
    ...['--cache', '--cache-strategy', 'content', '--cache-location', path.join(cache, 'prettier')],
    '.',
  ]),
]

/**
 * `npm test`: everything, one line with all counts at the end, and a code that is not 0 where anything failed. What the
 * machine lacks is got first, as tests in Node start a browser too.
 */
export async function run(): Promise<number> {
  rmSync(reports, { recursive: true, force: true })
  mkdirSync(reports, { recursive: true })
  const machine = await prepareMachine()
  const results: Result[] = []
  const steps: readonly (readonly Check[])[] = [
    [building],
    // By themselves: three windows at a time keep two cores busy, and beside the others all take longer than one after the other.
    [{ name: 'tests in window and browser', run: () => testInWindows(machine) }],
    [{ name: 'tests in Node', run: () => testInNode(machine) }, ...readings],
  ]
  for (const checks of steps) {
    console.log(`\n== ${checks.map(({ name }) => name).join(', ')}`)
    results.push(
      ...(await sideBySide(
        checks.map((check) => () => resultOf(check)),
        1,
      )),
    )
  }
  return told(results, machine)
}

/** Prints what was found, the counts of all in the last line. */
function told(results: readonly Result[], { lacks }: TestMachine): number {
  console.log('\nThe slowest tests:')
  for (const { name, seconds } of slowest(results.flatMap(({ times }) => times)))
    console.log(`${seconds.toFixed(1).padStart(6)} s  ${name}`)
  console.log('')
  for (const { name, counts, seconds } of results) {
    console.log(`${name.padEnd(30)} ${lineOf(counts)} (${seconds.toFixed(0)} s)`)
  }
  for (const what of lacks) console.log(`Left out: ${what}.`)
  const total = sum(results.map(({ counts }) => counts))
  console.log(lineOf(total))
  return total.failed === 0 ? 0 : 1
}

const lineOf = ({ passed, failed, skipped }: Counts) =>
  `${passed} passed, ${failed} failed, ${skipped} skipped`

async function resultOf({ name, run }: Check): Promise<Result> {
  const began = Date.now()
  const found = await run().catch((thrown: unknown) => {
    console.error(thrown)
    return one(1)
  })
  if (found.counts.failed > 0) console.log(`${name}: failed`)
  return { name, ...found, seconds: (Date.now() - began) / 1000 }
}

async function testInNode({ env }: TestMachine): Promise<Found> {
  const file = path.join(reports, 'vitest.json')
  const words = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
  const code = await runHeld('node_modules/vitest/vitest.mjs', words, env)
  const report = readReport(file)
  return { counts: countsOfVitest(report, code), times: timesOfVitest(report, process.cwd()) }
}

async function testInWindows({ env }: TestMachine): Promise<Found> {
  // Not in test-results: Playwright empties that folder when it begins.
  const file = path.join(cache, 'playwright.json')
  rmSync(file, { force: true })
  const code = await runTool('@playwright/test/cli.js', ['test', '--reporter=list,json'], {
    ...env,
    PLAYWRIGHT_JSON_OUTPUT_NAME: path.resolve(file),
  })
  const report = readReport(file)
  return { counts: countsOfPlaywright(report, code), times: timesOfPlaywright(report) }
}

function readReport(file: string): unknown {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null
}
