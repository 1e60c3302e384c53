import { createHash } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import path from 'node:path'

const ruleFiles = (root: string): string[] => [
  path.join(root, 'eslint.config.js'),
  path.join(root, 'package-lock.json'),
  ...readdirSync(path.join(root, 'scripts', 'lint'))
    .sort()
    .map((name) => path.join(root, 'scripts', 'lint', name)),
]

/**
 * Where lint keeps what it knows of files that have not changed: a place for each set of rules. The tool itself notices
 * another configuration and another version, but not that a rule of the house was written anew.
 */
export function lintCache(root: string, folder: string): string {
  const digest = createHash('sha256')
  for (const file of ruleFiles(root)) digest.update(readFileSync(file))
  return path.join(folder, `lint-${digest.digest('hex').slice(0, 12)}`)
}
