import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** Long enough for a download on a slow line; a machine without the network fails within a second. */
const longestDownload = 10 * 60_000

const own = path.join('node_modules', 'electron')

/**
 * The Electron program to run: the one that `ELECTRON_OVERRIDE_DIST_PATH` names, else the project's own, fetched once
 * where it can be. `null` where there is none.
 */
export async function findElectron(): Promise<string | null> {
  const named = process.env['ELECTRON_OVERRIDE_DIST_PATH']
  if (named) return programIn(named)
  const there = programIn(path.join(own, 'dist'))
  if (there) return there
  if (!(await download())) return null
  return programIn(path.join(own, 'dist'))
}

function programIn(folder: string): string | null {
  const names = ['electron', 'electron.exe', path.join('Electron.app', 'Contents', 'MacOS', 'Electron')]
  return names.map((name) => path.resolve(folder, name)).find((file) => existsSync(file)) ?? null
}

/** Electron's own download, quiet where it fails. */
function download(): Promise<boolean> {
  const manifest = path.join(own, 'package.json')
  if (!existsSync(manifest)) return Promise.resolve(false)
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string }
  console.log(`Fetching the Electron ${version} runtime, once…`)
  const child = spawn(process.execPath, [path.join(own, 'install.js')], {
    stdio: 'ignore',
    timeout: longestDownload,
  })
  return new Promise((fetched) => {
    child.once('error', () => fetched(false))
    child.once('exit', (code) => fetched(code === 0))
  })
}
