import type { ChildProcess } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import {
  endAll,
  laySources,
  makeRoot,
  rootLacks,
  startIn,
  type CleanRoot,
  type Person,
} from './fresh-root.ts'

/** What a command said, and its code at its end. */
interface Ran {
  readonly said: string
  readonly code: number
}

/** One thing that has to be so on a fresh machine; gives why it is not, `null` where it is. */
interface Step {
  readonly what: string
  readonly run: (root: CleanRoot) => Promise<string | null>
}

/** Shows what a command says while it runs, and keeps it; ends it early once `enough` says so. */
async function ran(
  child: ChildProcess,
  enough: (said: string) => Promise<boolean> = () => Promise.resolve(false),
): Promise<Ran> {
  let said = ''
  const take = (part: Buffer): void => {
    said += String(part)
    process.stdout.write(part)
    void enough(said).then((yes) => yes && endAll(child))
  }
  const interrupted = (): void => endAll(child)
  process.once('SIGINT', interrupted)
  child.stdout?.on('data', take)
  child.stderr?.on('data', take)
  const code = await new Promise<number>((ended) => {
    child.once('error', () => ended(126))
    child.once('close', (code) => ended(code ?? 1))
  })
  process.off('SIGINT', interrupted)
  return { said, code }
}

const inHome = (root: CleanRoot, person: Person, command: string) => ran(startIn(root, person, command))

const stackLine = /^\s+at .+:\d+:\d+\)?$/m

/** The README's first command: the page is served where there is no window, and says so. */
async function starts(root: CleanRoot): Promise<string | null> {
  let status = 0
  const { said } = await ran(startIn(root, 'walker', 'npm ci && npm start'), async (text) => {
    const address = /Pitchline is at (http:\S+)/.exec(text)?.[1]
    if (address === undefined || status !== 0) return false
    const answer = await fetch(address)
    status = (await answer.text()).includes('id="app"') ? answer.status : -1
    return true
  })
  if (stackLine.test(said)) return 'a stack trace'
  return status === 200 ? null : `the page answered ${status || 'nothing'}`
}

/** A command of someone who may install nothing, where a browser is missing: one line says so, no stack trace. */
const saysWhatIsMissing =
  (command: string, line: RegExp) =>
  async (root: CleanRoot): Promise<string | null> => {
    const { said } = await inHome(root, 'walker', command)
    if (stackLine.test(said)) return 'a stack trace'
    const lines = said.split('\n').filter((one) => line.test(one))
    return lines.length === 1 ? null : `${lines.length} lines say what is missing, not one`
  }

const closingLine = /^(\d+) passed, (\d+) failed, (\d+) skipped$/m

/** The README's second command, whole. */
async function tests(root: CleanRoot): Promise<string | null> {
  const { said, code } = await inHome(root, 'root', 'npm ci && npm test')
  const [line = 'no closing line'] = closingLine.exec(said) ?? []
  return code === 0 ? null : `${line} (code ${code})`
}

/** As far as the installs, and what needed them: the drawings and one spec in both of its places. */
async function testsInShort(root: CleanRoot): Promise<string | null> {
  const command =
    'npm ci && node scripts/run.js computer && npx vitest run test/drawings && npx playwright test start.spec'
  const { said, code } = await inHome(root, 'root', command)
  if (/Left out:|skipped/.test(said)) return 'something was left out'
  return code === 0 ? null : `code ${code}`
}

const steps = (short: boolean): readonly Step[] => [
  { what: 'npm ci && npm start, without the right to install', run: starts },
  {
    what: 'a single run of tests without a browser says so in one line',
    run: saysWhatIsMissing('npx vitest run test/drawings', /^Left out: .*no Chromium.*playwright install/),
  },
  {
    what: 'npm run bench without a browser says so in one line',
    run: saysWhatIsMissing('npm run bench -- window', /^Not measured: .*no Chromium.*playwright install/),
  },
  short
    ? { what: 'npm ci, the installs of npm test, and what needs them', run: testsInShort }
    : { what: 'npm ci && npm test', run: tests },
]

async function tryAll(root: CleanRoot, short: boolean): Promise<number> {
  const results: string[] = []
  let failed = 0
  for (const { what, run } of steps(short)) {
    console.log(`\n== ${what}`)
    const began = Date.now()
    const trouble = await run(root)
    if (trouble !== null) failed += 1
    const seconds = ((Date.now() - began) / 1000).toFixed(0)
    results.push(
      `${trouble === null ? 'so' : 'NOT SO'}: ${what}${trouble === null ? '' : `: ${trouble}`} (${seconds} s)`,
    )
  }
  console.log(`\nOn a fresh machine:\n${results.join('\n')}`)
  return failed === 0 ? 0 : 1
}

/**
 * `npm run fresh`: both commands of the README in a scratch Debian with Node and nothing else, an empty home and an empty
 * cache, in namespaces of its own. `--short` runs of `npm test` only the installs and what needed them.
 */
export async function run(words: string[]): Promise<number> {
  const unknown = words.filter((word) => word !== '--short')
  if (unknown.length > 0) {
    console.error(`npm run fresh takes --short, not ${unknown.join(', ')}.`)
    return 1
  }
  const lacks = rootLacks()
  if (lacks !== null) {
    console.error(`npm run fresh cannot run here: ${lacks}.`)
    return 1
  }
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-fresh-'))
  try {
    console.log('Making a bare system…')
    const root = makeRoot(folder)
    laySources(root, 'walker')
    laySources(root, 'root')
    return await tryAll(root, words.includes('--short'))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
