import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { build } from 'vite'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { diskFileSystem } from '../../src-main/files/file-system.ts'
import { Journal } from '../../src-main/files/journal.ts'
import { seedsOf } from '../fuzz/spoil.ts'
import { contentOf, versionOf } from './support/versions.ts'

/** A sample, as each takes a tenth of a second; `npm run endure` does a thousand. */
const kills = Number(process.env['PITCHLINE_KILLS'] ?? 100)
/** Two at a time: the machine that this is measured on has two cores. */
const lanes = 2

let folder = ''
let program = ''

beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-kill-'))
  program = path.join(folder, 'writer.mjs')
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: false,
      rolldownOptions: {
        input: path.resolve('test/files/support/writer.ts'),
        output: { entryFileNames: 'writer.mjs' },
      },
    },
  })
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Starts the writer, kills it at some moment after its first whole save; answers the last version that it finished. */
function writeAndKill(place: string, from: number, milliseconds: number): Promise<number> {
  const child = spawn(process.execPath, [program, place, String(from)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let said = ''
  return new Promise((ended, failed) => {
    child.stdout.on('data', (data) => {
      if (said === '') setTimeout(() => child.kill('SIGKILL'), milliseconds)
      said += String(data)
    })
    child.once('error', failed)
    child.once('close', (_code, signal) => {
      const finished = said.slice(0, said.lastIndexOf('\n')).split('\n').at(-1) ?? ''
      if (signal === 'SIGKILL' && finished !== '') ended(Number(finished))
      else failed(new Error(`the writer ended by itself: ${said}`))
    })
  })
}

async function lane(number: number): Promise<string[]> {
  const place = mkdtempSync(path.join(folder, 'lane-'))
  const troubles: string[] = []
  let next = 1
  for (const kill of seedsOf(Math.ceil(kills / lanes))) {
    // Seeded, so that a run can be repeated: 0 to 12 ms in steps that no save keeps time with.
    const milliseconds = ((kill * 7919 + number * 104729) % 1201) / 100
    const finished = await writeAndKill(place, next, milliseconds)
    const saved = versionOf(readFileSync(path.join(place, 'sled.build.json'), 'utf8'))
    const [kept] = await new Journal(diskFileSystem, path.join(place, 'unsaved')).recovered()
    // The kill may come after a save and before it is said: one version more than the last that was said.
    if (saved === null || saved < finished || saved > finished + 1) {
      troubles.push(`kill ${kill}: version ${saved} in the file, ${finished} finished`)
    }
    const keptVersion = kept ? versionOf(kept.text) : null
    if (keptVersion === null || keptVersion < finished || keptVersion > finished + 1) {
      troubles.push(`kill ${kill}: version ${keptVersion} kept, ${finished} finished`)
    }
    next = finished + 2
  }
  return troubles
}

it('tells a torn or mixed content from a version', () => {
  const content = contentOf(7)
  expect(versionOf(content)).toBe(7)
  expect(versionOf(content.slice(0, -5))).toBeNull()
  expect(versionOf(content.slice(0, 40) + contentOf(8).slice(40))).toBeNull()
  expect(versionOf('')).toBeNull()
})

it(
  `${kills} kills at random moments of saving and keeping: the file and the kept work always open, none lost`,
  { timeout: 60_000 + 2000 * kills },
  async () => {
    const troubles = (await Promise.all(Array.from({ length: lanes }, (_, number) => lane(number)))).flat()
    expect(troubles).toEqual([])
  },
)
