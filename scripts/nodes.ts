import { spawnSync } from 'node:child_process'
import { mkdirSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { runProgram } from './child.ts'
import { installedUnder, pageTrouble } from './installed.ts'

/** The oldest that `engines` lets in, and the two that are kept up. */
const usual = ['20.19.0', '22', '24']

const demos = ['quick-sled-puller', 'hut-hauler', 'culvert-crawler'] as const

/** Command lines whose answer has to be the same under every Node, but for the last digits of numbers. */
const lines: readonly (readonly string[])[] = [
  ...demos.map((name) => ['check', `examples/${name}.build.json`, '--json']),
  ...demos.map((name) => ['report', `examples/${name}.build.json`, '--date', '2031-02-03']),
  ['search', 'examples/culvert-crawler.build.json', 'examples/culvert-crawler.space.json', '--json'],
  ['uncertainty', 'examples/culvert-crawler.build.json', '--samples', '200', '--json'],
  ['explain', 'examples/hut-hauler.build.json', 'topSpeedMps'],
]

/** Tests that lean on Node itself: files, processes, threads, the server; and the golden builds. */
const tests = [
  'test/golden',
  'test/files/atomic-save.test.ts',
  'test/files/real-disk.test.ts',
  'test/cli/check.test.ts',
  'test/cli/search.test.ts',
  'test/fuzz/server.test.ts',
  'test/bridge',
]

/**
 * `npm run nodes [-- <version or program> …]`: under other Nodes, `npm ci` of the sources as they are, the command line
 * built so, the page that `npm start` serves, and the tests that lean on Node. Each version comes from the registry's `node`
 * package, into a folder of the system's for what is temporary.
 */
export async function run(asked: readonly string[]): Promise<number> {
  const here = answersOf(process.execPath, process.cwd())
  let failed = 0
  for (const wanted of asked.length === 0 ? usual : asked) {
    const node = wanted.includes(path.sep) ? wanted : fetched(wanted)
    const version = node === null ? '' : spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim()
    if (node === null || version === '') {
      console.log(`Node ${wanted}: left out, because it could not be fetched or does not start.`)
      failed += 1
    } else if (!(await holdsUnder(node, version, here))) failed += 1
  }
  return failed === 0 ? 0 : 1
}

/** Whether all of it is the same under a Node; says what is not. */
async function holdsUnder(node: string, version: string, here: readonly string[]): Promise<boolean> {
  const folder = await installedUnder(node)
  if (folder === null) {
    console.log(`Node ${version}: \`npm ci\` failed.`)
    return false
  }
  try {
    const there = answersOf(node, folder)
    const equal = lines.filter((_, at) => there[at] === here[at]).length
    const other = lines.filter((_, at) => !isNearly(there[at] ?? '', here[at] ?? ''))
    const page = await pageTrouble(node, folder)
    const code = await runProgram(node, ['node_modules/vitest/vitest.mjs', 'run', ...tests], {}, folder)
    const told = `${lines.length - other.length} of ${lines.length} answers as under ${process.version}, ${equal} to the letter`
    console.log(
      `Node ${version}: installed; ${told}; page ${page ?? 'served'}; tests ${code === 0 ? 'passed' : 'failed'}.`,
    )
    for (const words of other) console.log(`  another answer: pitchline ${words.join(' ')}`)
    return other.length === 0 && page === null && code === 0
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** What the command built in a folder answers, each with its exit code. */
function answersOf(node: string, folder: string): readonly string[] {
  return lines.map((words) => {
    const { status, stdout, stderr } = spawnSync(node, ['dist/cli/pitchline.cjs', ...words], {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
    })
    return `${status}\n${stdout}\n${stderr}`
  })
}

const number = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g
/** Share by which a number may differ: the powers and logarithms of another V8 are off in their last bit. */
const lastDigits = 1e-12

/** Whether two answers are the same but for the last digits of their numbers. */
function isNearly(one: string, other: string): boolean {
  if (one.replace(number, '#') !== other.replace(number, '#')) return false
  const [ours, theirs] = [one, other].map((text) => (text.match(number) ?? []).map(Number))
  return (ours ?? []).every((value, at) => {
    const there = theirs?.[at] ?? NaN
    return value === there || Math.abs(value - there) <= lastDigits * Math.abs(there)
  })
}

/** The program of a version, null where it could not be had. */
function fetched(version: string): string | null {
  const folder = path.join(os.tmpdir(), 'pitchline-nodes', version)
  mkdirSync(folder, { recursive: true })
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  const { status } = spawnSync(
    npm,
    ['install', '--prefix', folder, '--no-save', '--no-audit', '--no-fund', `node@${version}`],
    {
      stdio: ['ignore', 'ignore', 'inherit'],
    },
  )
  return status === 0 ? path.join(folder, 'node_modules', 'node', 'bin', 'node') : null
}
