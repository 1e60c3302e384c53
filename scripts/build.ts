import { chmodSync, existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { build, type InlineConfig } from 'vite'
import { targets } from '../electron.config.ts'
import { keepCompiled } from './compiled.ts'
import { stampFile, stampNow } from './stale.ts'

/**
 * Builds everything, or the targets named: `node scripts/run.js build cli`.
 */
export async function run(words: string[]): Promise<number> {
  const names = words.filter((word) => !word.startsWith('-'))
  const unknown = names.filter((name) => !(name in targets))
  if (unknown.length > 0) {
    console.error(`There is no target ${unknown.join(', ')}; targets: ${Object.keys(targets).join(', ')}.`)
    return 1
  }
  const began = Date.now()
  const wanted = (name: string) => names.length === 0 || names.includes(name)
  for (const [name, configs] of Object.entries(targets)) {
    if (wanted(name)) for (const config of configs) await buildForUse(config)
  }
  if (wanted('cli')) await keepCompiled()
  if (names.length === 0) writeFileSync(stampFile, stampNow(process.cwd()))
  linkCommand()
  console.log(`Built in ${((Date.now() - began) / 1000).toFixed(1)} s.`)
  return 0
}

/**
 * One Vite build of what people use. Vite reads from the environment whether it is for use or for development, and says
 * "development" there itself when it imports a script: without this, the page ships a framework that checks itself and
 * takes a stack trace at every change.
 */
export async function buildForUse(config: InlineConfig): Promise<void> {
  const before = process.env['NODE_ENV']
  process.env['NODE_ENV'] = 'production'
  try {
    await build(config)
  } finally {
    if (before === undefined) delete process.env['NODE_ENV']
    else process.env['NODE_ENV'] = before
  }
}

/** Puts `pitchline` where `npx pitchline` looks first: npm links the commands of packages, but not the project's own. */
function linkCommand(): void {
  const folder = path.join('node_modules', '.bin')
  const command = path.join(folder, 'pitchline')
  const script = path.join('..', '..', 'dist', 'cli', 'pitchline.cjs')
  if (!existsSync(path.join(folder, script))) return
  mkdirSync(folder, { recursive: true })
  rmSync(command, { force: true })
  if (process.platform === 'win32') writeFileSync(`${command}.cmd`, `@node "%~dp0\\${script}" %*\r\n`)
  else {
    chmodSync(path.join('dist', 'cli', 'pitchline.cjs'), 0o755)
    symlinkSync(script, command)
  }
}
