import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isInstalled } from '../../scripts/child.ts'
import { writeSums } from '../../scripts/package/sums.ts'

describe('sums of what is published', () => {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-sums-'))
    // *Source:* FIPS 180-4, whose examples have the text "abc" and its digest.
    writeFileSync(path.join(folder, 'one.deb'), 'abc')
    writeFileSync(path.join(folder, 'two.tar.gz'), 'two')
    for (const own of ['builder-debug.yml', 'two.blockmap', '.config.json'])
      writeFileSync(path.join(folder, own), own)
    mkdirSync(path.join(folder, 'linux-unpacked'))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('are of each file that is published and of no other, made twice too', () => {
    writeSums(folder)
    const lines = writeSums(folder).trimEnd().split('\n')
    expect(lines.map((line) => line.replace(/^[0-9a-f]{64} {2}/, ''))).toEqual(['one.deb', 'two.tar.gz'])
    expect(lines[0]).toMatch(/^ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad /)
  })

  it.skipIf(!isInstalled('sha256sum'))(
    'are what the system’s own tool takes, and it tells a file that changed',
    () => {
      writeSums(folder)
      const checked = () =>
        spawnSync('sha256sum', ['--strict', '-c', 'SHA256SUMS'], { cwd: folder, encoding: 'utf8' })
      expect(checked()).toMatchObject({ status: 0, stdout: 'one.deb: OK\ntwo.tar.gz: OK\n' })
      writeFileSync(path.join(folder, 'two.tar.gz'), 'changed')
      expect(checked()).toMatchObject({ status: 1 })
      writeFileSync(path.join(folder, 'two.tar.gz'), 'two')
    },
  )
})
