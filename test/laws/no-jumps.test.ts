import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { withEntry } from '../../shared-engine/entries/edit.ts'
import { fieldOf } from '../../shared-engine/entries/fields.ts'
import { keysOf, valueAt } from '../../shared-engine/entries/path.ts'
import { completeBuild, readStoredBuildText, readStoredBuildValue } from '../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { randomStream } from '../../shared-engine/numeric/random.ts'

// A part does not break because a number is a hair larger: each margin follows each entry that may have any value
// without a jump. Where two neighbours part by much, what lies between is halved until it is as narrow as rounding: a
// steep margin comes together, a jump stays.

/** Entries moved of each build; more where the environment asks for them. */
const moved = Number(process.env['PITCHLINE_MOVED'] ?? 4)
/** Places looked at between 0.6 and 1.6 times what is entered. */
const places = 12
/** Of the load that is allowed: less between two neighbours is not looked into, and no jump at their limit. */
const steep = 0.1
const jump = 0.03
const halvings = 36

/** Where a margin does jump, and why it should. */
const physical: readonly (readonly [entry: RegExp, limit: RegExp, why: string])[] = [
  [
    /shaftDiameterMm$/i,
    /joint/,
    'keys and screws come in stock sizes, by ranges of the diameter (DIN 6885-1)',
  ],
  [/^track\.wrapDegrees$/, /^track\.(tooth|stop)-/, 'a tooth is in mesh or not: their number is whole'],
]

/** Load over allowed of each limit, by its id, and whether the machine gets going at all: where it no longer does, what drives it falls away at once. */
interface Uses {
  readonly going: boolean
  readonly of: ReadonlyMap<string, number>
}

const folder = new URL('../golden/2/', import.meta.url)
const builds = readdirSync(folder)
  .filter((name) => name.endsWith('.build.json'))
  .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const)

/** Paths of numbers that are entered, may have any value, and are no count. */
function pathsOf(value: unknown, keys: readonly string[] = []): readonly string[] {
  if (typeof value === 'number') {
    const path = keys.join('.')
    const field = fieldOf(path)
    return value !== 0 && field !== undefined && field.whole !== true && field.low !== undefined ? [path] : []
  }
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    ['tolerances', 'origins', 'readings', 'version'].includes(key) ? [] : pathsOf(inner, [...keys, key]),
  )
}

/** Null where the entry may not be this. */
function usesAt(stored: StoredBuild, path: string, value: number): Uses | null {
  const edited = withEntry(stored, path, value)
  if (!readStoredBuildValue(edited).ok) return null
  const { limits, figures } = check(completeBuild(edited))
  const of = new Map(limits.flatMap(({ id, margin }) => (margin === null ? [] : [[id, 1 - margin]])))
  return { going: figures.topSpeedMps !== null, of }
}

/** How far a limit's use is apart at two places, against what is allowed or the use itself; 0 where one lacks it. */
function apart(one: Uses | null, other: Uses | null, id: string): number {
  const [here, there] = [one?.of.get(id), other?.of.get(id)]
  if (here === undefined || there === undefined || one?.going !== other?.going) return 0
  return Math.abs(here - there) / Math.max(1, Math.abs(here), Math.abs(there))
}

/** Whether a limit's use still jumps where the two places have come together. */
function jumps(id: string, from: number, to: number, at: (value: number) => Uses | null): string | null {
  let [low, high] = [from, to]
  let [before, after] = [at(low), at(high)]
  for (let done = 0; done < halvings && apart(before, after, id) > jump; done += 1) {
    const middle = (low + high) / 2
    const between = at(middle)
    if (between?.of.has(id) !== true) return null
    if (apart(before, between, id) > apart(between, after, id)) [high, after] = [middle, between]
    else [low, before] = [middle, between]
  }
  if (apart(before, after, id) <= jump) return null
  return `${id} at ${low}: ${before?.of.get(id)?.toPrecision(4)} to ${after?.of.get(id)?.toPrecision(4)}`
}

function jumpsAlong(stored: StoredBuild, path: string): readonly string[] {
  const value = Number(valueAt(stored, keysOf(path)))
  const kept = new Map<number, Uses | null>()
  const at = (one: number) => {
    const before = kept.get(one)
    if (before !== undefined) return before
    const uses = usesAt(stored, path, one)
    kept.set(one, uses)
    return uses
  }
  const values = Array.from(
    { length: places + 1 },
    (_, place) => value * 0.6 * (1.6 / 0.6) ** (place / places),
  )
  const uses = values.map(at)
  return values.slice(1).flatMap((to, place) => {
    const [before, after] = [uses[place] ?? null, uses[place + 1] ?? null]
    const ids = [...(before?.of.keys() ?? [])].filter((id) => apart(before, after, id) > steep)
    const unexplained = ids.filter(
      (id) => !physical.some(([entry, limit]) => entry.test(path) && limit.test(id)),
    )
    return unexplained
      .flatMap((id) => jumps(id, values[place] ?? NaN, to, at) ?? [])
      .map((one) => `${path}: ${one}`)
  })
}

it.each(builds)('%s: no margin jumps where an entry is moved', (name, text) => {
  const read = readStoredBuildText(text)
  if (!read.ok) throw new Error(`${name} is no build`)
  const paths = [...pathsOf(read.value)]
  const random = randomStream(builds.findIndex(([one]) => one === name) + 1)
  const chosen = Array.from(
    { length: Math.min(moved, paths.length) },
    () => paths.splice(Math.floor(random() * paths.length), 1)[0] ?? '',
  )
  expect(chosen.flatMap((path) => jumpsAlong(read.value, path))).toEqual([])
})
