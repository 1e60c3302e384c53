import { spawn } from 'node:child_process'
import { readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { servePage, type InitialBuild, type Served } from '../src-main/serve/serve.ts'
import { run as build } from './build.ts'
import { findElectron } from './electron-runtime.ts'
import { isStale } from './stale.ts'

/**
 * `npm start`, `npm start -- my.build.json`: the desktop window, or the same page in the system's browser where the
 * window cannot be.
 */
export async function run(words: string[]): Promise<number> {
  if (isStale(process.cwd())) {
    const code = await build([])
    if (code !== 0) return code
  }
  // npm starts scripts in the project's folder; the file was named from where the person is.
  const here = process.env['INIT_CWD'] ?? process.cwd()
  const named = words.find((word) => !word.startsWith('-'))
  const file = named === undefined ? null : path.resolve(here, named)
  if (file !== null && !statSync(file, { throwIfNoEntry: false })?.isFile()) {
    console.error(`There is no file ${file}.`)
    return 1
  }
  const why = await whyNoWindow(file)
  return why === null ? 0 : serve(why, file)
}

/** Opens the window and waits for its end; says in one clause why there is none, `null` where there was one. */
async function whyNoWindow(file: string | null): Promise<string | null> {
  const { platform, env } = process
  const hasDisplay = platform !== 'linux' || Boolean(env['DISPLAY'] || env['WAYLAND_DISPLAY'])
  if (!hasDisplay) return 'there is no display'
  // Chromium's sandbox does not run as root, and Pitchline does not run without its sandbox.
  if (platform === 'linux' && process.getuid?.() === 0) return 'the window does not run as root'
  const electron = await findElectron()
  if (electron === null) return 'there is no Electron runtime, and it could not be fetched'
  return opens(electron, ['.', ...(file === null ? [] : [file])])
}

function opens(electron: string, words: string[]): Promise<string | null> {
  const began = Date.now()
  const child = spawn(electron, words, { stdio: 'inherit' })
  return new Promise((ended) => {
    child.once('error', () => ended('the Electron runtime does not start'))
    child.once('exit', (code, signal) => {
      const failedAtOnce =
        Date.now() - began < 5000 && code !== 0 && signal !== 'SIGINT' && signal !== 'SIGTERM'
      ended(failedAtOnce ? 'the Electron runtime does not start on this machine' : null)
    })
  })
}

/** Serves the page until Ctrl+C. */
async function serve(why: string, file: string | null): Promise<number> {
  let served: Served
  try {
    served = await servePage(path.resolve('dist/page'), file === null ? null : initialFrom(file))
  } catch (thrown) {
    console.error(`Pitchline could not start: ${thrown instanceof Error ? thrown.message : String(thrown)}.`)
    return 1
  }
  console.log(`No window, because ${why}: Pitchline is at ${served.address} in your browser, until Ctrl+C.`)
  openBrowser(served.address)
  await new Promise((stopped) => {
    process.once('SIGINT', stopped)
    process.once('SIGTERM', stopped)
  })
  await served.close()
  return 0
}

function initialFrom(file: string): InitialBuild {
  return { name: path.basename(file), bytes: readFileSync(file) }
}

/** Opens the system's browser; where there is none, the printed address does. */
function openBrowser(address: string): void {
  if (process.env['PITCHLINE_NO_BROWSER']) return
  const openers = { darwin: ['open'], win32: ['cmd', '/c', 'start', '""'] } as Record<string, string[]>
  const [program = '', ...words] = openers[process.platform] ?? ['xdg-open']
  const child = spawn(program, [...words, address], { stdio: 'ignore', detached: true })
  child.once('error', () => undefined)
  child.unref()
}
