import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { buildFacts } from './build-facts.ts'
import { runProgram } from './child.ts'
import { prepareMachine, type TestMachine } from './computer.ts'

/** What is promised for the long run, and how it is tried: `npm test` has each in small. */
interface Trial {
  /** What it is asked for by. */
  readonly name: string
  readonly what: string
  /** How many of it are done at the share of 1. */
  readonly count: number
  readonly variable: string
  readonly program: readonly string[]
}

const vitest = 'node_modules/vitest/vitest.mjs'
const playwright = 'node_modules/@playwright/test/cli.js'

/** Kinds of input that are spoilt: seven kinds of file, command lines, requests to the server. */
const kindsOfInput = 9
const ofEachKind = Math.ceil(1_000_000 / kindsOfInput)

const trials: readonly Trial[] = [
  {
    name: 'files',
    what: 'spoilt inputs: files, so many of each of seven kinds (builds, spaces, patterns, readings, columns, alarms, channels)',
    count: ofEachKind,
    variable: 'PITCHLINE_FUZZED',
    program: [vitest, 'run', 'test/fuzz/inputs.test.ts'],
  },
  {
    name: 'lines',
    what: 'spoilt inputs: command lines',
    count: ofEachKind,
    variable: 'PITCHLINE_FUZZED',
    program: [vitest, 'run', 'test/fuzz/command-line.test.ts'],
  },
  {
    name: 'requests',
    what: 'spoilt inputs: requests to the server',
    count: ofEachKind,
    variable: 'PITCHLINE_FUZZED',
    program: [vitest, 'run', 'test/fuzz/server.test.ts'],
  },
  {
    name: 'logs',
    what: 'spoilt logs',
    count: 100_000,
    variable: 'PITCHLINE_FUZZED_LOGS',
    program: [vitest, 'run', 'test/engine/log/spoilt-files.test.ts'],
  },
  {
    name: 'saves',
    what: 'kills of a process that saves and keeps without a pause',
    count: 1_000,
    variable: 'PITCHLINE_KILLS',
    program: [vitest, 'run', 'test/files/kill.test.ts'],
  },
  {
    name: 'kills',
    what: 'kills of the real program while it is typed in and saved',
    count: 1_000,
    variable: 'PITCHLINE_APP_KILLS',
    program: [playwright, 'test', 'test/window/kills.window.spec.ts', '--project=window', '--workers=1'],
  },
  {
    name: 'use',
    what: 'rounds of use in one page, each opening every build and question',
    count: 200,
    variable: 'PITCHLINE_SOAK',
    program: [playwright, 'test', 'test/window/soak.browser.spec.ts', '--project=soak'],
  },
]

/** Seconds in which the test tool may get hold of a started program: a machine that does other work is no fault of ours. */
const startPatience = 60

const file = path.join('docs', 'endurance.md')

const heading = `# What was endured

\`npm run endure\` does each of these for hours and adds a line a trial; \`npm run endure -- 0.01\` does a hundredth of each.
The seeds are 0 and up where none is named, so that any one can be repeated; \`npm test\` does the first few.
\`npm run endure -- 0.01 files --from 200000\` does others, from that one on.

| day | commit | what | how many | minutes | result |
| --- | --- | --- | ---: | ---: | --- |
`

/**
 * `npm run endure [-- <share> [<name> …] [--from <seed>]]`: every long promise tried, or those named, each added to
 * `docs/endurance.md` as soon as it is over: a run that is ended keeps what was done.
 */
export async function run(words: readonly string[]): Promise<number> {
  const at = words.indexOf('--from')
  const [asked = '1', ...names] = at < 0 ? words : [...words.slice(0, at), ...words.slice(at + 2)]
  const from = Number(at < 0 ? 0 : words[at + 1])
  const share = Number(asked)
  if (!(share > 0 && share <= 1)) {
    console.error(`The share of the whole is ${asked}; allowed: above 0, at most 1.`)
    return 1
  }
  if (!Number.isSafeInteger(from) || from < 0) {
    console.error(`The first seed is ${words[at + 1] ?? 'not named'}; allowed: a whole number from 0 on.`)
    return 1
  }
  const unknown = names.find((name) => !trials.some((trial) => trial.name === name))
  if (unknown !== undefined) {
    console.error(`No trial is named ${unknown}; there are ${trials.map(({ name }) => name).join(', ')}.`)
    return 1
  }
  const machine = await prepareMachine()
  const rows: string[] = []
  for (const trial of trials.filter(({ name }) => names.length === 0 || names.includes(name))) {
    const row = await rowOf(trial, Math.ceil(share * trial.count), from, machine)
    rows.push(row)
    mkdirSync(path.dirname(file), { recursive: true })
    writeFileSync(file, `${existsSync(file) ? readFileSync(file, 'utf8') : heading}${row}\n`)
  }
  for (const one of machine.lacks) console.log(`Left out: ${one}.`)
  return rows.every((row) => row.endsWith(' held |')) ? 0 : 1
}

async function rowOf({ what, variable, program }: Trial, count: number, from: number, { env }: TestMachine) {
  const told = from === 0 ? what : `${what}, seeds from ${from}`
  console.log(`\n== ${count} ${told}`)
  const began = Date.now()
  const asked = {
    [variable]: String(count),
    PITCHLINE_FIRST_SEED: String(from),
    PITCHLINE_PATIENCE: String(startPatience),
  }
  const code = await runProgram(process.execPath, program, { ...env, ...asked })
  const minutes = ((Date.now() - began) / 60_000).toFixed(1)
  const commit =
    (JSON.parse(buildFacts(process.cwd())['__PITCHLINE_COMMIT__'] ?? '""') as string) || 'unknown'
  const day = new Date().toISOString().slice(0, 10)
  const result = code === 0 ? 'held' : 'failed'
  return `| ${day} | ${commit} | ${told} | ${count.toLocaleString('en')} | ${minutes} | ${result} |`
}
