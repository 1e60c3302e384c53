import { spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { browserLacks } from '../window/launch/computer.ts'

// On a machine without a browser, a run of one folder says in one line what is missing and how to get it.

const nowhere = path.join(os.tmpdir(), 'no-such-browser')

afterEach(() => vi.unstubAllEnvs())

describe('a machine without what the tests need', () => {
  it('is told by one line which browser is not there', () => {
    vi.stubEnv('PITCHLINE_CHROMIUM', nowhere)
    expect(browserLacks()).toBe(`PITCHLINE_CHROMIUM names ${nowhere}, and there is no such file`)
  })

  it.skipIf(process.platform === 'win32')('is told of a browser that does not start', () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-browser-'))
    const program = path.join(folder, 'chromium')
    writeFileSync(program, '#!/bin/sh\nexit 127\n')
    chmodSync(program, 0o755)
    vi.stubEnv('PITCHLINE_CHROMIUM', program)
    expect(browserLacks()).toMatch(/^\S+ does not start; `npx playwright install-deps chromium` gets/)
    rmSync(folder, { recursive: true })
  })

  it('leaves the tests of a single run out and counts them so, without a stack trace', () => {
    // the tool itself is started: long on a busy machine
    const words = ['node_modules/vitest/vitest.mjs', 'run', 'test/drawings/live', '--reporter=dot']
    const env = { ...process.env, PITCHLINE_CHROMIUM: nowhere, NO_COLOR: '1' }
    const { status, stdout, stderr } = spawnSync(process.execPath, words, { env, encoding: 'utf8' })
    const said = stdout + stderr
    expect(said.match(/Left out: .*/g)).toEqual([
      `Left out: drawings on a page, because PITCHLINE_CHROMIUM names ${nowhere}, and there is no such file.`,
    ])
    expect(said).toMatch(/Tests +\d+ skipped \(\d+\)/)
    expect(said).not.toMatch(/^\s+at /m)
    expect(status).toBe(0)
  }, 120_000)
})
