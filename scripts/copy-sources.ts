import { execFileSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync } from 'node:fs'
import path from 'node:path'

/** Lays the sources, as they are in this folder now, into another one: what git knows, and what it would take. */
export function copySources(into: string): void {
  const words = ['ls-files', '--cached', '--others', '--exclude-standard', '-z']
  const files = execFileSync('git', words, { encoding: 'utf8' }).split('\0')
  for (const file of files.filter((name) => name !== '' && existsSync(name))) {
    mkdirSync(path.dirname(path.join(into, file)), { recursive: true })
    cpSync(file, path.join(into, file))
  }
}
