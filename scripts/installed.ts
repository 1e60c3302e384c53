import { spawn } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { runProgram } from './child.ts'
import { copySources } from './copy-sources.ts'

// The sources installed, built and started by a Node that is not this one, in a folder of their own.

/** That Node is what everything finds that asks for one. */
const environmentOf = (node: string): NodeJS.ProcessEnv => ({
  PATH: [path.dirname(node), process.env['PATH'] ?? ''].join(path.delimiter),
})

/** The sources as they are now after `npm ci` under a Node: their folder, null where it failed. */
export async function installedUnder(node: string): Promise<string | null> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-installed-'))
  copySources(folder)
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  const words = ['--prefix', folder, 'ci', '--no-audit', '--no-fund']
  return (await runProgram(npm, words, environmentOf(node))) === 0 ? folder : null
}

/** Milliseconds in which the page is served, on a busy machine. */
const servedWithin = 120_000

/** Why `npm start` under a Node serves no page there, where there can be no window; null where it does. */
export async function pageTrouble(node: string, folder: string): Promise<string | null> {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...rest } = process.env
  const env = { ...rest, ...environmentOf(node), PITCHLINE_NO_BROWSER: '1' }
  const child = spawn(node, ['scripts/run.js', 'start'], {
    cwd: folder,
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  try {
    const address = await new Promise<string | null>((found) => {
      const late = setTimeout(() => found(null), servedWithin)
      const end = (answer: string | null) => {
        clearTimeout(late)
        found(answer)
      }
      for (const stream of [child.stdout, child.stderr])
        stream.on('data', (part) => {
          said += String(part)
          const there = /Pitchline is at (http:\S+)/.exec(said)?.[1]
          if (there !== undefined) end(there)
        })
      child.once('error', () => end(null))
      child.once('exit', () => end(null))
    })
    if (address === null) return `it said ${JSON.stringify(said.slice(-300))}`
    const answer = await fetch(address)
    const html = await answer.text()
    const script = /<script[^>]* src="\.\/([^"]+)"/.exec(html)?.[1]
    if (answer.status !== 200 || script === undefined) return `the page answered ${answer.status}`
    const { status } = await fetch(new URL(script, address))
    return status === 200 ? null : `its script answered ${status}`
  } finally {
    child.kill('SIGKILL')
  }
}
