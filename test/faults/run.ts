import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { withFault, type Fault } from './fault.ts'
import { faults } from './list.ts'

/** Tests that a fault may be caught by, the quick ones first; `engine` is what concerns the physics. */
const suites: Readonly<Record<string, readonly string[]>> = {
  sources: ['test/sources'],
  engine: ['pack', 'motor', 'stages', 'track', 'ground', 'heat', 'vehicle', 'cases', 'limits', 'figures']
    .map((part) => `test/engine/${part}/`)
    .concat('test/engine/check.test.ts'),
  golden: ['test/golden'],
  laws: ['test/laws'],
}

/** Share of faults that has to be noticed. */
const leastShare = 0.8

/** A copy of what the tests need, in a folder of its own: the sources in use are never touched. */
function copyOfProject(): string {
  const copy = mkdtempSync(path.join(tmpdir(), 'pitchline-faults-'))
  for (const part of ['shared-engine', 'src-main', 'src-renderer', 'test', 'examples', 'scripts'])
    cpSync(part, path.join(copy, part), { recursive: true })
  for (const file of ['package.json', 'vitest.config.ts', 'tsconfig.base.json', 'svelte.config.js'])
    cpSync(file, path.join(copy, file))
  symlinkSync(path.resolve('node_modules'), path.join(copy, 'node_modules'), 'junction')
  return copy
}

/** Whether a suite passes in the copy. */
function passes(copy: string, suite: string): boolean {
  const words = [
    'node_modules/vitest/vitest.mjs',
    'run',
    '--bail=1',
    '--reporter=dot',
    ...(suites[suite] ?? []),
  ]
  return spawnSync(process.execPath, words, { cwd: copy, stdio: 'ignore' }).status === 0
}

/** Names of the suites that notice a fault. */
function noticedBy(copy: string, fault: Fault, wanted: readonly string[]): string[] {
  const file = path.join(copy, 'shared-engine', fault.file)
  const sound = readFileSync(file, 'utf8')
  writeFileSync(file, withFault(sound, fault))
  try {
    return wanted.filter((suite) => !passes(copy, suite))
  } finally {
    writeFileSync(file, sound)
  }
}

/** What is shown of a fault: one line, spaces joined. */
function lineOf({ file, sound, planted }: Fault): string {
  const plain = (text: string) => text.replace(/\s+/g, ' ')
  return `${file}: ${plain(sound)} → ${plain(planted) || '(nothing)'}`
}

function percentOf(count: number): string {
  return `${((100 * count) / faults.length).toFixed(0)} %`
}

/**
 * `npm run faults`, `npm run faults -- sources laws`: plants every fault of the list into a copy of the engine, one after
 * the other, runs the tests named (all where none is) and prints which of them notice it.
 *
 * @returns 0 where enough are noticed, 1 where not or where sound sources fail already
 */
export function run(words: readonly string[]): Promise<number> {
  const wanted = words.length === 0 ? Object.keys(suites) : words
  const copy = copyOfProject()
  const counts = new Map(wanted.map((suite) => [suite, 0]))
  const missed: string[] = []
  try {
    const unsound = wanted.filter((suite) => !passes(copy, suite))
    if (unsound.length > 0) {
      console.error(`These tests fail without any fault: ${unsound.join(', ')}.`)
      return Promise.resolve(1)
    }
    for (const fault of faults) {
      const noticed = noticedBy(copy, fault, wanted)
      for (const suite of noticed) counts.set(suite, (counts.get(suite) ?? 0) + 1)
      if (noticed.length === 0) missed.push(lineOf(fault))
      console.log(`${noticed.length > 0 ? noticed.join(' ') : 'NOT NOTICED'}  ${lineOf(fault)}`)
    }
  } finally {
    rmSync(copy, { recursive: true, force: true })
  }
  const caught = faults.length - missed.length
  console.log(`\n${caught} of ${faults.length} planted faults are noticed: ${percentOf(caught)}.`)
  for (const [suite, count] of counts) console.log(`  ${suite} alone: ${percentOf(count)}`)
  return Promise.resolve(caught >= leastShare * faults.length ? 0 : 1)
}
