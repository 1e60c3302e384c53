import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'

/** The project's folder. */
export const root = path.resolve(import.meta.dirname ?? '.', '../../..')

/** The machine's own Chromium; `undefined`: the one that Playwright brings. */
export function chromiumPath(): string | undefined {
  const named = process.env['PITCHLINE_CHROMIUM']
  return [named, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find((file) => file && existsSync(file))
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

/** A display in memory where the machine has none; `null` where it has one, or has no Xvfb. */
export async function startDisplay(): Promise<ChildProcess | null> {
  if (process.platform !== 'linux' || process.env['DISPLAY'] || !existsSync('/usr/bin/Xvfb')) return null
  const child = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1920x1200x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  })
  const number = await new Promise<string>((found) => {
    child.stdio[3]?.once('data', (data) => found(String(data).trim()))
    child.once('error', () => found(''))
    child.once('exit', () => found(''))
  })
  if (number === '') return null
  process.env['DISPLAY'] = `:${number}`
  return child
}
