import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import type * as disk from 'node:fs/promises'
import type { FileHandle } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { expect, it, vi } from 'vitest'
import { saveAtomically } from '../../src-main/files/atomic-save.ts'
import { diskFileSystem } from '../../src-main/files/file-system.ts'

const calls: string[] = []

/** Node's own calls, carried out, and noted with what they were done to. */
vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof disk>()
  const noted = (name: string) => {
    const { base, dir } = path.parse(name)
    return base.endsWith('.new') ? 'the new file' : dir === os.tmpdir() ? 'the folder' : base
  }
  return {
    ...real,
    open: async (name: string, ...rest: [string, number?]) => {
      const opened = await real.open(name, ...rest)
      const watch = (call: 'sync' | 'write' | 'close') => {
        const does = opened[call].bind(opened) as (...words: unknown[]) => Promise<unknown>
        opened[call] = ((...words: unknown[]) => {
          calls.push(`${call} ${noted(name)}`)
          return does(...words)
        }) as FileHandle[typeof call] & FileHandle['sync'] & FileHandle['write']
      }
      ;(['sync', 'write', 'close'] as const).forEach(watch)
      return opened
    },
    rename: (from: string, to: string) => {
      calls.push(`rename ${noted(from)} to ${noted(to)}`)
      return real.rename(from, to)
    },
  }
})

// What must be forced, and when: the new content before its name, the name before the save is said to be done
// (Pillai et al., "All file systems are not created equal", OSDI 2014). A kill loses nothing without it; a power cut does.
it.skipIf(process.platform === 'win32')(
  'a save forces the content, then the name, to the disk itself',
  async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-disk-'))
    const file = path.join(folder, 'sled.build.json')
    writeFileSync(file, 'as it was')
    calls.length = 0
    const bytes = new TextEncoder().encode('saved')
    expect(await saveAtomically(diskFileSystem, { file, bytes, replaces: 'anything' })).toMatchObject({
      ok: true,
    })
    expect(readFileSync(file, 'utf8')).toBe('saved')
    expect(calls).toEqual([
      'write the new file',
      'sync the new file',
      'close the new file',
      'rename the new file to sled.build.json',
      'sync the folder',
      'close the folder',
    ])
    rmSync(folder, { recursive: true })
  },
)

it('a file with the longest name that the disk takes is saved, and what a killed save left of it goes', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-disk-'))
  for (const name of [`${'s'.repeat(244)}.build.json`, `${'ä'.repeat(122)}.build.json`]) {
    const file = path.join(folder, name)
    writeFileSync(file, 'as it was')
    const bytes = new TextEncoder().encode('saved')
    expect(await saveAtomically(diskFileSystem, { file, bytes, replaces: 'anything' })).toMatchObject({
      ok: true,
    })
    expect(readFileSync(file, 'utf8')).toBe('saved')
    rmSync(file)
    expect(readdirSync(folder)).toEqual([])
  }
  rmSync(folder, { recursive: true })
})
