import { spawnSync } from 'node:child_process'
import { chromiumPath, electronPath } from '../test/window/launch/computer.ts'
import { isInstalled, runProgram, runTool } from './child.ts'
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

/** Gets what the end-to-end tests need and this machine lacks, where that may be: Chromium, a display, Electron. */
export async function prepareMachine(): Promise<TestMachine> {
  const lacks: string[] = []
  await installPackages()
  if (!(await hasBrowser())) lacks.push('the page in a browser: no Chromium could be had')
  const electron = await testElectron()
  if (electron === null) lacks.push('the real window: no Electron runtime could be had')
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !isInstalled('Xvfb')) {
    lacks.push('the real window: there is no display and no Xvfb')
  }
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
  await runProgram('apt-get', ['update', '-qq'])
  await install(['xvfb', ...libraries])
  if ((await install(renamed)) !== 0) await install(renamed.map((name) => `${name}t64`))
  if (chromiumPath() === undefined) await install(['chromium'])
}

/** The system's Chromium, else the one that Playwright fetches. */
async function hasBrowser(): Promise<boolean> {
  if (chromiumPath() !== undefined) return true
  return (await runTool('playwright/cli.js', ['install', 'chromium'])) === 0
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
