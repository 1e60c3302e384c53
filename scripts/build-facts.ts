import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import path from 'node:path'

/** What *About* says of a build: put into the bundles in place of these names (src-main/facts.d.ts declares them). */
export function buildFacts(root: string): Record<string, string> {
  const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string }
  return {
    __PITCHLINE_VERSION__: JSON.stringify(version),
    __PITCHLINE_COMMIT__: JSON.stringify(commitOf(root)),
  }
}

/** Short name of the commit, empty outside a clone. */
function commitOf(root: string): string {
  try {
    const words = ['rev-parse', '--short', 'HEAD']
    return execFileSync('git', words, {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim()
  } catch {
    return ''
  }
}
