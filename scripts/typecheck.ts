import { runTool } from './child.ts'

/** Parts with a tsconfig of their own; the page is checked together with its components. */
const parts = ['shared-engine', 'src-main', 'scripts', 'test']

/** Strict types everywhere. All parts are checked even where one fails. */
export async function run(): Promise<number> {
  const codes: number[] = []
  for (const part of parts) codes.push(await runTool('typescript/bin/tsc', ['-p', part]))
  const page = ['--tsconfig', 'src-renderer/tsconfig.json', '--threshold', 'warning', '--output', 'human']
  codes.push(await runTool('svelte-check/bin/svelte-check', page))
  return Math.max(...codes)
}
