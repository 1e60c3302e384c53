import { spawnSync } from 'node:child_process'
import { browserLacks, chromiumPath, electronPath, windowLacks } from '../test/window/launch/computer.ts'
import { isInstalled, runProgram } from './child.ts'
import { findElectron } from './electron-runtime.ts'

/** What a browser and the window need on a bare Debian; two names each, as Debian 13 renamed some. */
const libraries = ['libnss3', 'libgbm1', 'libxss1', 'libxtst6']
const renamed = ['libgtk-3-0', 'libasound2', 'libatk-bridge2.0-0', 'libcups2']

export interface TestMachine {
  /** Clauses for what could not be had. */
  readonly lacks: readonly string[]
  /** For the test runner's environment. */
  readonly env: NodeJS.ProcessEnv
}

/**
 * Gets what the tests and benches need and this machine lacks, where that may be: Chromium, a display, Electron. Comes
 * before the first of them, as some of those in Node start a browser too.
 */
export async function prepareMachine(): Promise<TestMachine> {
  await installPackages()
  fetchBrowser()
  const electron = await testElectron()
  const lacks: string[] = []
  const browser = browserLacks()
  if (browser !== null) lacks.push(`the page in a browser, because ${browser}`)
  const window = windowLacks()
  if (window !== null) lacks.push(`the real window, because ${window}`)
  return { lacks, env: electron === null ? {} : { ELECTRON_OVERRIDE_DIST_PATH: electron } }
}

/** As root on Debian and its kin only: elsewhere nothing is installed unasked. */
async function installPackages(): Promise<void> {
  const isRoot = process.platform === 'linux' && process.getuid?.() === 0
  const complete = chromiumPath() !== undefined && isInstalled('Xvfb')
  if (!isRoot || complete || !isInstalled('apt-get')) return
  const env = { DEBIAN_FRONTEND: 'noninteractive' }
  const install = (names: readonly string[]) =>
    runProgram('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...names], env)
  console.log('Installing what the tests need and this machine lacks, once…')
  await runProgram('apt-get', ['update', '-qq'])
  await install(['xvfb', ...libraries])
  if ((await install(renamed)) !== 0) await install(renamed.map((name) => `${name}t64`))
  if (chromiumPath() !== undefined) return
  if ((await install(['chromium-headless-shell'])) !== 0) await install(['chromium'])
}

/** Where the machine has no Chromium of its own, the one that Playwright fetches. */
function fetchBrowser(): void {
  if (chromiumPath() !== undefined || browserLacks() === null) return
  console.log('Fetching Chromium, once…')
  // Quiet: what it says where it fails is long, and what is lacking is said in one line afterwards.
  spawnSync(process.execPath, ['node_modules/playwright/cli.js', 'install', 'chromium'], { stdio: 'ignore' })
}

/** Folder of a runtime for tests: the project's own Electron, else an older one that the registry carries. */
async function testElectron(): Promise<string | null> {
  const own = await findElectron()
  if (own !== null) return folderOf(own)
  const program = process.platform === 'linux' ? 'test/window/electron-runtime/get' : null
  if (program === null || !isInstalled('bash')) return null
  const got = spawnSync('bash', [program], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] })
  const there = got.status === 0 ? electronPath() : null
  return there === null ? null : folderOf(there)
}

const folderOf = (file: string) => file.replace(/[/\\][^/\\]+$/, '')

/** `node scripts/run.js computer`: gets what the tests need, and says in a line each what could not be had. */
export async function run(): Promise<number> {
  const { lacks } = await prepareMachine()
  for (const what of lacks) console.log(`Left out: ${what}.`)
  return lacks.length === 0 ? 0 : 1
}
