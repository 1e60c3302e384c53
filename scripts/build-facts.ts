import { execFileSync } from 'node:child_process'
import { readFileSync, realpathSync } from 'node:fs'
import path from 'node:path'

/** What *About* says of a build: put into the bundles in place of these names (src-main/facts.d.ts declares them). */
export function buildFacts(root: string): Record<string, string> {
  const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string }
  return {
    __PITCHLINE_VERSION__: JSON.stringify(version),
    __PITCHLINE_COMMIT__: JSON.stringify(commitOf(root)),
  }
}

/** Short name of the commit, and whether files were changed since; empty outside a clone of our own. */
function commitOf(root: string): string {
  const git = (...words: string[]) =>
    execFileSync('git', words, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim()
  try {
    // A copy that lies inside another project's clone has no history either.
    if (realpathSync(git('rev-parse', '--show-toplevel')) !== realpathSync(root)) return ''
    const changed = git('status', '--porcelain', '--untracked-files=no') === '' ? '' : ', with changes'
    return `${git('rev-parse', '--short', 'HEAD')}${changed}`
  } catch {
    return ''
  }
}
