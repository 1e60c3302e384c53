import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { chromium } from 'playwright'

/** The project's folder. */
export const root = path.resolve(import.meta.dirname ?? '.', '../../..')

/** The headless one first: it shows the same page with two thirds of the work. */
const ownBrowsers = ['chromium-headless-shell', 'chromium', 'chromium-browser'].map(
  (name) => `/usr/bin/${name}`,
)

/** The Chromium that `PITCHLINE_CHROMIUM` names, else the machine's own; `undefined`: the one that Playwright brings. */
export function chromiumPath(): string | undefined {
  return process.env['PITCHLINE_CHROMIUM'] || ownBrowsers.find((file) => existsSync(file))
}

let starting: { readonly file: string; readonly starts: boolean } | null = null

/** Whether a browser starts at all: one that was fetched may lack the system's libraries. Asked once. */
function doesStart(file: string): boolean {
  if (starting?.file !== file) {
    starting = { file, starts: spawnSync(file, ['--version'], { stdio: 'ignore' }).status === 0 }
  }
  return starting.starts
}

/** Why the page cannot be shown in a browser here, and what would help, in one line; `null` where it can. */
export function browserLacks(): string | null {
  const file = chromiumPath() ?? chromium.executablePath()
  if (process.env['PITCHLINE_CHROMIUM'] && !existsSync(file)) {
    return `PITCHLINE_CHROMIUM names ${file}, and there is no such file`
  }
  if (!existsSync(file)) {
    return 'there is no Chromium; `npx playwright install --with-deps chromium` gets one, as does `npm test` as root on Debian'
  }
  if (doesStart(file)) return null
  return `${file} does not start; \`npx playwright install-deps chromium\` gets the libraries that it may lack`
}

/** Why there can be no real window here, and what would help, in one line; `null` where there can. */
export function windowLacks(): string | null {
  if (electronPath() === null) return 'there is no Electron runtime; `npm test` fetches one'
  const { platform, env } = process
  if (platform !== 'linux' || env['DISPLAY'] || existsSync(displayInMemory)) return null
  return 'there is no display; Xvfb is one in memory (Debian: `apt-get install xvfb`)'
}

/** An Electron runtime to test in, `null` where this machine has none. `npm test` looks further, and fetches one. */
export function electronPath(): string | null {
  const cache = process.env['XDG_CACHE_HOME'] ?? path.join(os.homedir(), '.cache')
  const folders = [
    process.env['ELECTRON_OVERRIDE_DIST_PATH'],
    path.join(root, 'node_modules/electron/dist'),
    path.join(cache, 'electron-runtime/25.1.1'),
  ]
  const programs = folders
    .filter((folder) => folder !== undefined)
    .map((folder) => path.join(folder, 'electron'))
  return programs.find((file) => existsSync(file)) ?? null
}

/** Chromium refuses its sandbox as root, which is what test machines run as. Tests only: what ships never says so. */
export const rootFlags: readonly string[] =
  process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : []

/**
 * A page of a test lives for seconds: its rubbish fits into a larger first heap, nothing need look for more beside it (a
 * tenth of the processor's time of all specs), and better machine code is worth making only of what runs very often: for
 * all that runs a few hundred times its making took up to a third of a test's time. A search or 10,000 draws still get theirs.
 */
export const forAShortLife =
  '--js-flags=--no-concurrent-marking --min-semi-space-size=16 --no-maglev --invocation-count-for-turbofan=60000'

/**
 * The same for the older engine of the real window, where making better machine code took a third of all processor time.
 * The number of runs after which it is made goes by the name that both engines know: a switch that an engine does not
 * know is passed over with all that follows it, and said on its error output alone.
 */
export const forAShortLifeInWindow =
  '--js-flags=--no-concurrent-marking --min-semi-space-size=16 --invocation-count-for-turbofan=20000'

const displayInMemory = '/usr/bin/Xvfb'

/** A display in memory where the machine has none; `null` where it has one, or has no Xvfb. */
export async function startDisplay(): Promise<ChildProcess | null> {
  if (process.platform !== 'linux' || process.env['DISPLAY'] || !existsSync(displayInMemory)) return null
  const child = spawn(
    displayInMemory,
    ['-displayfd', '3', '-screen', '0', '1920x1200x24', '-nolisten', 'tcp'],
    {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    },
  )
  const number = await new Promise<string>((found) => {
    child.stdio[3]?.once('data', (data) => found(String(data).trim()))
    child.once('error', () => found(''))
    child.once('exit', () => found(''))
  })
  if (number === '') return null
  process.env['DISPLAY'] = `:${number}`
  return child
}
