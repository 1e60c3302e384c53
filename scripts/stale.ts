import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { buildFacts } from './build-facts.ts'

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
  'scripts/build.ts',
  'scripts/build-facts.ts',
  'scripts/compiled.ts',
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

/** What the stamp of a build of the sources as they are now says: when they changed, and what *About* tells of them. */
export function stampNow(root: string): string {
  return `${newestSource(root)}\n${JSON.stringify(buildFacts(root))}\n`
}

const stampOf = (root: string): string => {
  const file = path.join(root, stampFile)
  return existsSync(file) ? readFileSync(file, 'utf8') : ''
}

/** Is there no whole build of the sources as they are now? A commit alone makes no build stale for use. */
export function isStale(root: string): boolean {
  return stampOf(root).split('\n')[0] !== String(newestSource(root))
}

/** Is there a whole build of the sources as they are now, *About* included? */
export function isBuilt(root: string): boolean {
  return stampOf(root) === stampNow(root)
}
