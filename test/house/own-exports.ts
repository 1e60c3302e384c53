import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { exportsOf, filesBelow } from './sources-of.ts'

const folders = ['shared-engine', 'src-main', 'src-renderer', 'test', 'scripts']
const endings = ['.ts', '.js', '.svelte']

/** `import a, { b as c, type D } from './e.ts'`, `export { f } from './g.ts'`; the words in front may fill lines. */
const named = /(?:import|export)\s+(?:type\s+)?(?:\w+\s*,\s*)?\{([^}]*)\}\s*from\s*'(\.[^']+)'/g
/** What takes all of a module: `import * as`, `export *`, `import('…')`. */
const whole = /(?:(?:import|export)\s+\*[^']*from\s*|import\(\s*(?:\/\*[^*]*\*\/\s*)?)'(\.[^']+)'/g

const nameIn = (word: string) =>
  word
    .replace(/^\s*(type\s+)?/, '')
    .split(/\s+as\s+/)[0]
    ?.trim() ?? ''

/** `file: name` of everything that another file imports by name; `file: *` of modules taken whole. */
function importedBy(file: string): string[] {
  const text = readFileSync(file, 'utf8')
  const at = (target: string) => path.posix.join(path.posix.dirname(file), target)
  return [
    ...[...text.matchAll(named)].flatMap(([, words = '', target = '']) =>
      words.split(',').map((word) => `${at(target)}: ${nameIn(word)}`),
    ),
    ...[...text.matchAll(whole)].map(([, target = '']) => `${at(target)}: *`),
  ]
}

/** `file: name` of every export of the engine, the program and the page that no other file imports, sorted. */
export function ownExports(): string[] {
  const files = [
    ...folders.flatMap((folder) => filesBelow(folder, endings)),
    ...['electron.config.ts', 'vitest.config.ts', 'playwright.config.ts', 'eslint.config.js'].filter(
      existsSync,
    ),
  ]
  const imported = new Set(files.flatMap(importedBy))
  return ['shared-engine', 'src-main', 'src-renderer']
    .flatMap((folder) => filesBelow(folder, ['.ts']))
    .filter((file) => !file.endsWith('.d.ts') && !imported.has(`${file}: *`))
    .flatMap(exportsOf)
    .map(({ file, name }) => `${file}: ${name}`)
    .filter((one) => !imported.has(one))
    .toSorted()
}
