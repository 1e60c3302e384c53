import { cpSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { withFault, type Fault } from './fault.ts'

const folders = ['shared-engine', 'src-main', 'src-renderer', 'test', 'examples', 'scripts']
const files = ['package.json', 'vitest.config.ts', 'tsconfig.base.json', 'svelte.config.js']

/** A copy of what the tests need, in a folder of its own: the sources in use are never touched. */
export function copyOfProject(): string {
  const copy = mkdtempSync(path.join(tmpdir(), 'pitchline-faults-'))
  for (const part of folders) cpSync(part, path.join(copy, part), { recursive: true })
  for (const file of files) cpSync(file, path.join(copy, file))
  symlinkSync(path.resolve('node_modules'), path.join(copy, 'node_modules'), 'junction')
  return copy
}

/** Writes a fault into a copy; gives back what takes it out again. */
export function plant(copy: string, fault: Fault): () => void {
  const file = path.join(copy, 'shared-engine', fault.file)
  const sound = readFileSync(file, 'utf8')
  writeFileSync(file, withFault(sound, fault))
  return () => writeFileSync(file, sound)
}
