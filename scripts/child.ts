import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'

/** Runs a program to its end, its output shown; the answer is its exit code (1 where it does not start). */
export function runProgram(
  program: string,
  words: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<number> {
  const child = spawn(program, words, { stdio: 'inherit', env: { ...process.env, ...env } })
  return new Promise((ended) => {
    child.once('error', (error) => {
      console.error(`${program}: ${error.message}`)
      ended(1)
    })
    child.once('exit', (code) => ended(code ?? 1))
  })
}

/** Runs a tool of node_modules with this Node, which is the same on every system. */
export function runTool(
  script: string,
  words: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<number> {
  return runProgram(process.execPath, [path.join('node_modules', script), ...words], env)
}

/** Is a program on the search path? */
export function isInstalled(program: string): boolean {
  const folders = (process.env['PATH'] ?? '').split(path.delimiter)
  return folders.some((folder) => existsSync(path.join(folder, program)))
}
