import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** Long enough for a download on a slow line; a machine without the network fails within a second. */
const longestDownload = 10 * 60_000

/**
 * The Electron program to run: the one that `ELECTRON_OVERRIDE_DIST_PATH` names, else the project's own, fetched where it
 * is not there yet and can be. `null` where there is none.
 *
 * @param own folder of the project's own Electron package
 */
export async function findElectron(own = path.join('node_modules', 'electron')): Promise<string | null> {
  const named = process.env['ELECTRON_OVERRIDE_DIST_PATH']
  if (named) return programIn(named)
  const there = programIn(path.join(own, 'dist'))
  if (there) return there
  if (!(await download(own))) return null
  return programIn(path.join(own, 'dist'))
}

function programIn(folder: string): string | null {
  const names = ['electron', 'electron.exe', path.join('Electron.app', 'Contents', 'MacOS', 'Electron')]
  return names.map((name) => path.resolve(folder, name)).find((file) => existsSync(file)) ?? null
}

/** Electron's own download. What it says where it fails is long: one line tells it, and that it is tried again. */
async function download(own: string): Promise<boolean> {
  const manifest = path.join(own, 'package.json')
  if (!existsSync(manifest)) return false
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string }
  console.log(`Fetching the Electron ${version} runtime, which is kept…`)
  const isFetched = await installs(own)
  if (!isFetched) console.log('It could not be fetched; the next start tries again.')
  return isFetched
}

function installs(own: string): Promise<boolean> {
  const child = spawn(process.execPath, [path.join(own, 'install.js')], {
    stdio: 'ignore',
    timeout: longestDownload,
  })
  return new Promise((fetched) => {
    child.once('error', () => fetched(false))
    child.once('exit', (code) => fetched(code === 0))
  })
}
