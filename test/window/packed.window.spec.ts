import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { copyFile, mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { expect, test } from '@playwright/test'
import { rootFlags } from './launch/computer.ts'

// The packed program, started as a file manager starts it: with a build's path. Its fuses let no test in by Node's door,
// so it is looked at by Chromium's. `npm run package` runs this on what it has just packed.

const packed = process.env['PITCHLINE_PACKED'] ?? ''

/** What the killed program's own processes still write as they end comes back into the folder: it is removed again. */
const remove = (folder: string) =>
  rm(folder, { recursive: true, force: true, maxRetries: 50, retryDelay: 100 })

/** Number of the door by which the program can be looked at. */
function doorOf(program: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = ''
    program.stderr?.on('data', (part: Buffer) => {
      said += part.toString()
      const [, door] = /DevTools listening on ws:\/\/127\.0\.0\.1:(\d+)/.exec(said) ?? []
      if (door !== undefined) found(door)
    })
    program.once('exit', (code) => failed(new Error(`it ended with ${code}: ${said}`)))
  })
}

interface Target {
  readonly type: string
  readonly url: string
  readonly webSocketDebuggerUrl: string
}

/** Run by a Node of its own, which has to be asked for a web socket before version 22. */
const asking = `
const socket = new WebSocket(process.argv[1])
socket.onopen = () => socket.send('{"id":1,"method":"Runtime.evaluate","params":{"expression":"document.body.innerText"}}')
socket.onmessage = ({ data }) => { console.log(JSON.parse(data).result.result.value); process.exit() }`

/** What a person reads on a page of the program. */
function wordsOn({ webSocketDebuggerUrl }: Target): string {
  const words = ['--experimental-websocket', '-e', asking, webSocketDebuggerUrl]
  return spawnSync(process.execPath, words, { encoding: 'utf8', timeout: 10_000 }).stdout
}

test('the packed program starts with the build that it is given, and shows it', async () => {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'pitchline-packed-'))
  const file = path.join(folder, 'mine.build.json')
  await copyFile('examples/culvert-crawler.build.json', file)
  const words = [...rootFlags, `--user-data-dir=${folder}/data`, '--remote-debugging-port=0', file]
  const program = spawn(packed, words, { stdio: ['ignore', 'ignore', 'pipe'] })
  try {
    const list = `http://127.0.0.1:${await doorOf(program)}/json/list`
    const shown = async () => {
      const targets = (await (await fetch(list)).json()) as Target[]
      const [target] = targets.filter(
        ({ type, url }) => type === 'page' && url.startsWith('app://pitchline/'),
      )
      return target === undefined ? '' : wordsOn(target)
    }
    await expect.poll(shown).toMatch(/Newt, the culvert crawler\s+Saved in mine\.build\.json/)
  } finally {
    program.kill('SIGKILL')
    await remove(folder)
  }
})

test('it does not run as a Node, nor lets Node’s inspection in', async () => {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'pitchline-packed-'))
  const words = [...rootFlags, `--user-data-dir=${folder}`, '--inspect=0', '-e', 'console.log("ran as Node")']
  const program = spawn(packed, words, { env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' } })
  let said = ''
  for (const stream of [program.stdout, program.stderr])
    stream.on('data', (part: Buffer) => (said += part.toString()))
  try {
    // The program itself comes up instead: it is still there when a Node would long have ended.
    await new Promise((resolve) => setTimeout(resolve, 4000))
    expect(program.exitCode).toBeNull()
    expect(said).not.toContain('ran as Node')
    expect(said).not.toContain('Debugger listening')
  } finally {
    program.kill('SIGKILL')
    await remove(folder)
  }
})
