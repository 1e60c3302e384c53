import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'

/**
 * Runs a program to its end, its output shown; the answer is its exit code (1 where it does not start).
 *
 * @param cwd where it runs; here where none is named
 */
export function runProgram(
  program: string,
  words: readonly string[],
  env: NodeJS.ProcessEnv = {},
  cwd?: string,
): Promise<number> {
  const child = spawn(program, words, { stdio: 'inherit', env: { ...process.env, ...env }, cwd })
  return codeOf(child, program)
}

/** Runs a tool of node_modules with this Node, which is the same on every system. */
export function runTool(
  script: string,
  words: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<number> {
  return runProgram(process.execPath, [path.join('node_modules', script), ...words], env)
}

/** Runs a script with this Node and shows what it said in one piece at its end: for scripts that run side by side. */
export async function runHeld(
  script: string,
  words: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<number> {
  const child = spawn(process.execPath, [script, ...words], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...env },
  })
  const said: Buffer[] = []
  child.stdout.on('data', (part: Buffer) => said.push(part))
  child.stderr.on('data', (part: Buffer) => said.push(part))
  const code = await codeOf(child, script, 'close')
  process.stdout.write(Buffer.concat(said))
  return code
}

/** `close` comes after all output, `exit` may come before. */
function codeOf(child: ChildProcess, name: string, end: 'exit' | 'close' = 'exit'): Promise<number> {
  return new Promise((ended) => {
    child.once('error', (error) => {
      console.error(`${name}: ${error.message}`)
      ended(1)
    })
    child.once(end, (code) => ended(typeof code === 'number' ? code : 1))
  })
}

/** Is a program on the search path? */
export function isInstalled(program: string): boolean {
  const folders = (process.env['PATH'] ?? '').split(path.delimiter)
  return folders.some((folder) => existsSync(path.join(folder, program)))
}
