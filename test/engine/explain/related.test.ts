import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import { fieldOf, fieldPatterns } from '../../../shared-engine/entries/fields.ts'
import { keysOf, valueAt } from '../../../shared-engine/entries/path.ts'
import { completeBuild, readStoredBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { entriesBehind } from '../../../shared-engine/explain/related.ts'

// The law: whatever a small change of an entry moves, has that entry behind it. It holds the workings to be complete,
// where the replay holds them to be right.

const root = new URL('../../../', import.meta.url)

function storedIn(path: string): StoredBuild {
  const read = readStoredBuild(readFileSync(new URL(path, root)))
  if (!read.ok) throw new Error(path)
  return read.value
}

/** Paths of the numbers in force that may be any in their range: a whole number can't be moved a little. */
function movablePaths({ build }: Checked): readonly string[] {
  return fieldPatterns
    .filter(
      (pattern) => fieldOf(pattern)?.low !== undefined && !/^(version|tolerances|origins)/.test(pattern),
    )
    .filter((pattern) => fieldOf(pattern)?.whole !== true)
    .flatMap((pattern) =>
      pattern.includes('*') ? [0, 1, 2, 3, 4, 5].map((at) => pattern.replace('*', String(at))) : [pattern],
    )
    .filter((path) => typeof valueAt(build, keysOf(path)) === 'number')
}

/** A build with an entry moved by a part in 100,000, up or down; null where rules between entries forbid both. */
function moved(stored: StoredBuild, { build }: Checked, path: string): Checked | null {
  const value = Number(valueAt(build, keysOf(path)))
  for (const by of [1e-5, -1e-5]) {
    const edited = withEntry(stored, path, value === 0 ? by : value * (1 + by))
    if (readStoredBuildValue(edited).ok) return check(completeBuild(edited))
  }
  return null
}

/** 1e-9 of the larger: far above rounding, far below what the change does. */
const differs = (one: number | null | undefined, other: number | null | undefined) =>
  typeof one === 'number' &&
  typeof other === 'number' &&
  Math.abs(one - other) > 1e-9 * Math.max(Math.abs(one), Math.abs(other))

/** Figures and margins that are another number after the change. */
function movedSubjects(before: Checked, after: Checked): readonly string[] {
  const figures = Object.entries(before.figures)
    .filter(([name, value]) =>
      differs(value, (after.figures as Readonly<Record<string, number | null>>)[name]),
    )
    .map(([name]) => name)
  const limits = before.limits
    .filter((row) => {
      const same = after.limits.find((other) => other.id === row.id && other.case === row.case)
      return differs(row.margin, same?.margin)
    })
    .map((row) => row.id)
  return [...figures, ...limits]
}

const paths = ['examples/', 'test/golden/'].flatMap((folder) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.build.json'))
    .map((name) => folder + name),
)

describe('what an entry moves has the entry behind it', () => {
  test.each(paths)('%s', (path) => {
    const stored = storedIn(path)
    const before = check(completeBuild(stored))
    const behind = new Map<string, readonly string[]>()
    const behindOf = (subject: string) => {
      const known = behind.get(subject) ?? entriesBehind(before, subject)
      behind.set(subject, known)
      return known
    }
    const untold = movablePaths(before).flatMap((entry) => {
      const after = moved(stored, before, entry)
      if (after === null) return []
      return movedSubjects(before, after)
        .filter((subject) => !behindOf(subject).includes(entry))
        .map((subject) => `${entry} moves ${subject}`)
    })
    expect(untold).toEqual([])
  })
})

test('a name that this machine cannot have hangs on nothing', () => {
  const checked = check(completeBuild(storedIn('examples/hut-hauler.build.json')))
  expect(entriesBehind(checked, 'stage.6.bending')).toEqual([])
  expect(entriesBehind(checked, 'constructor')).toEqual([])
})
