import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'

/** What the builds are made of. */
const sources = [
  'shared-engine',
  'src-main',
  'src-renderer',
  'examples',
  'assets',
  'index.html',
  'package.json',
  'package-lock.json',
  'electron.config.ts',
]

/** Says of which sources the last whole build was made. */
export const stampFile = path.join('dist', 'built-from')

/** When the newest source was changed, in whole milliseconds; a folder counts too, for files taken away. */
export function newestSource(root: string): number {
  const newestIn = (file: string): number => {
    const stats = statSync(file)
    if (!stats.isDirectory()) return stats.mtimeMs
    return Math.max(stats.mtimeMs, ...readdirSync(file).map((name) => newestIn(path.join(file, name))))
  }
  const present = sources.map((name) => path.join(root, name)).filter((file) => existsSync(file))
  return Math.floor(Math.max(0, ...present.map(newestIn)))
}

/** Is there no whole build of the sources as they are now? */
export function isStale(root: string): boolean {
  const file = path.join(root, stampFile)
  return !existsSync(file) || Number(readFileSync(file, 'utf8')) !== newestSource(root)
}
