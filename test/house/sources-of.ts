import { readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'

/** Every file below a folder with one of the endings, from the project's root, forward slashes, sorted. */
export function filesBelow(folder: string, endings: readonly string[]): string[] {
  return readdirSync(folder)
    .sort()
    .flatMap((name) => {
      const file = path.posix.join(folder, name)
      if (statSync(file).isDirectory()) return filesBelow(file, endings)
      return endings.some((ending) => name.endsWith(ending)) ? [file] : []
    })
}

/** Every file of the project from its root; what `.gitignore` names by its folder is made, not kept. Asked without git: a fresh machine may have none. */
export function projectFiles(): string[] {
  const made = readFileSync('.gitignore', 'utf8')
    .split('\n')
    .flatMap((line) => (line.endsWith('/') ? [line.slice(0, -1)] : []))
  const skipped = new Set(['.git', ...made])
  const below = (folder: string): string[] =>
    readdirSync(folder, { withFileTypes: true }).flatMap((one) => {
      if (skipped.has(one.name)) return []
      const file = path.posix.join(folder, one.name)
      return one.isDirectory() ? below(file) : [file]
    })
  return below('.').sort()
}

/** A documented, exported thing of a source file. */
export interface Documented {
  readonly file: string
  readonly name: string
  readonly kind: 'function' | 'const' | 'class' | 'interface' | 'type'
  /** The docstring's lines without their stars; empty where there is none. */
  readonly doc: readonly string[]
}

const exported =
  /(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n)?export (?:async )?(function\*?|const|class|interface|type) (\w+)/g

/** Everything that a source file exports by name, with its docstring. */
export function exportsOf(file: string): Documented[] {
  return [...readFileSync(file, 'utf8').matchAll(exported)].map(([, doc, kind, name]) => ({
    file,
    name: name ?? '',
    kind: (kind ?? '').replace('*', '') as Documented['kind'],
    doc: (doc ?? '').split('\n').map((line) => line.replace(/^\s*\* ?/, '').trim()),
  }))
}
