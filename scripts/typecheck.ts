import path from 'node:path'
import { runHeld } from './child.ts'
import { sideBySide } from './lanes.ts'

/** Parts with a tsconfig of their own, the longest first; the page is checked together with its components. */
const parts = ['test', 'src-main', 'scripts', 'shared-engine']

const page = ['--tsconfig', 'src-renderer/tsconfig.json', '--threshold', 'warning', '--output', 'human']

const tool = (script: string, words: readonly string[]) => () =>
  runHeld(path.join('node_modules', script), words)

/**
 * Strict types everywhere. All parts are checked even where one fails. The native compiler takes a fifth of the time; the
 * page's components need the one with a JavaScript interface.
 */
export async function run(): Promise<number> {
  const codes = await sideBySide([
    tool('svelte-check/bin/svelte-check', page),
    ...parts.map((part) => tool('typescript-native/bin/tsc', ['-p', part])),
  ])
  return Math.max(...codes)
}
