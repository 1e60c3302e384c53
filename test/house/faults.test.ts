import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { copyOfProject, plant } from '../faults/copy.ts'
import { withFault, type Fault } from '../faults/fault.ts'
import { faults } from '../faults/list.ts'
import { suites } from '../faults/suites.ts'

// The run of all of them takes long and is started by hand; here that its list has not grown stale, and a sample.

const root = new URL('../../', import.meta.url)

describe('planted faults', () => {
  it.each(faults.map((fault) => [fault.file, fault.sound, fault] as const))(
    '%s: %s',
    (file, _sound, fault) => {
      const text = readFileSync(new URL(`shared-engine/${file}`, root), 'utf8')
      expect(withFault(text, fault)).not.toBe(text)
    },
  )

  it('are refused where the sound text is not there once', () => {
    const fault = { file: 'x.ts', sound: 'a + b', planted: 'a - b' }
    expect(() => withFault('a * b', fault)).toThrow('0 times')
    expect(() => withFault('a + b, a + b', fault)).toThrow('2 times')
  })

  it('are looked for by tests that are there', () => {
    const named = [...Object.values(suites).flat(), ...faults.flatMap(({ noticedIn = [] }) => noticedIn)]
    expect(named.length).toBeGreaterThan(10)
    expect(named.filter((name) => !existsSync(new URL(name, root)))).toEqual([])
  })

  it('stand in every part above the physics', () => {
    const parts = new Set(faults.map(({ file }) => file.split('/')[0]))
    for (const part of [
      'search',
      'uncertainty',
      'remedy',
      'sweep',
      'compare',
      'alarms',
      'draw',
      'report',
      'log',
    ])
      expect(parts).toContain(part)
  })
})

interface Report {
  readonly testResults: readonly { readonly name: string; readonly status: string }[]
}

/** Names of the test files that fail in a copy. */
function failingIn(copy: string, tests: readonly string[]): string[] {
  const words = ['node_modules/vitest/vitest.mjs', 'run', '--reporter=json', ...tests]
  const { stdout } = spawnSync(process.execPath, words, { cwd: copy, encoding: 'utf8', maxBuffer: 2 ** 28 })
  const { testResults } = JSON.parse(stdout) as Report
  expect(testResults).toHaveLength(tests.length)
  return testResults
    .filter(({ status }) => status === 'failed')
    .map(({ name }) => path.relative(copy, name).split(path.sep).join('/'))
}

/** Three faults, of three different test files, drawn by the seed of all property tests. */
function drawn(): Fault[] {
  const known = faults.filter(({ noticedIn }) => noticedIn !== undefined)
  const files = [...new Set(known.map(({ noticedIn }) => noticedIn))]
  const { seed } = fc.readConfigureGlobal()
  const sample = fc.sample(fc.shuffledSubarray(files, { minLength: 3, maxLength: 3 }), {
    seed,
    numRuns: 1,
  })[0]
  return (sample ?? []).map((file, at) => {
    const here = known.filter(({ noticedIn }) => noticedIn === file)
    return here[((seed ?? 0) + at) % here.length] as Fault
  })
}

describe('a sample of the planted faults', () => {
  it('is noticed, each by the test that is there for it', () => {
    const sample = drawn()
    const tests = sample.flatMap(({ noticedIn = [] }) => noticedIn)
    const copy = copyOfProject()
    try {
      for (const fault of sample) plant(copy, fault)
      expect(failingIn(copy, tests).sort()).toEqual([...tests].sort())
    } finally {
      rmSync(copy, { recursive: true, force: true })
    }
    // Another run of the tool, on a busy machine.
  }, 600_000)
})
