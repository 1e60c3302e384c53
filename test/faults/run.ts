import { spawnSync } from 'node:child_process'
import { rmSync } from 'node:fs'
import { copyOfProject, plant } from './copy.ts'
import type { Fault } from './fault.ts'
import { faults } from './list.ts'
import { suites } from './suites.ts'

/** Share of faults that has to be noticed. */
const leastShare = 0.8

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
  const takeOut = plant(copy, fault)
  try {
    return wanted.filter((suite) => !passes(copy, suite))
  } finally {
    takeOut()
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
