import { placesOf } from '../entries/condition.ts'
import { entryAt, withEntry } from '../entries/edit.ts'
import { entryReaderOf } from '../entries/entry-reader.ts'
import { fieldOf } from '../entries/fields.ts'
import type { Field } from '../entries/fields.ts'
import type { EntryOrigin, StoredBuild } from '../entries/schema.ts'
import { fromEngine } from '../units/convert.ts'
import { assumptions, assumptionOf } from './table.ts'

/** Digits of an estimate: more would look like knowledge. */
const digits = 2

/** Where an entry comes from; undefined where nobody has said. */
function originOf(stored: Pick<StoredBuild, 'origins'>, path: string): EntryOrigin | undefined {
  const origins: Readonly<Record<string, EntryOrigin>> = stored.origins ?? {}
  return Object.hasOwn(origins, path) ? origins[path] : undefined
}

/** Whether a number is the program's own and not the builder's. */
export function isAssumed(stored: Pick<StoredBuild, 'origins'>, path: string): boolean {
  return originOf(stored, path) === 'assumed'
}

/** Paths of all entries that are the program's own. */
export function assumedPaths(stored: Pick<StoredBuild, 'origins'>): readonly string[] {
  return Object.entries(stored.origins ?? {}).flatMap(([path, origin]) =>
    origin === 'assumed' ? [path] : [],
  )
}

/** In the entry's bench unit, of two digits, held to its range; a whole, even number where only those are allowed. */
function benchValue(value: number, field: Field): number {
  const bench = fromEngine(value, field.kind)
  const rounded = field.whole === true ? Math.round(bench) : Number(bench.toPrecision(digits))
  return Math.min(field.high ?? Infinity, Math.max(field.low ?? -Infinity, rounded))
}

/** An estimate of an entry, in its bench unit; undefined where none can be made. */
function estimateOf(stored: StoredBuild, path: string): number | undefined {
  const [assumption, field] = [assumptionOf(path), fieldOf(path)]
  const group = path.split('.').slice(0, -1).join('.')
  const value = assumption?.of(entryReaderOf(stored), group)
  return value === undefined || field === undefined ? undefined : benchValue(value, field)
}

/** The build with an entry of the program's own, marked as such: its estimate, or what is given. */
export function withAssumed(stored: StoredBuild, path: string, value?: number | string): StoredBuild {
  const put = value ?? estimateOf(stored, path)
  return put === undefined ? stored : withEntry(withEntry(stored, path, put), `origins.${path}`, 'assumed')
}

/**
 * The build with every estimate made anew from what is entered now. What the builder entered is never touched; a build
 * without assumed entries comes back as it is.
 *
 * *Source:* the formulas of this folder.
 */
export function withAssumptions(stored: StoredBuild): StoredBuild {
  if (assumedPaths(stored).length === 0) return stored
  return assumptions.reduce((build, { path: pattern }) => {
    const places = placesOf(pattern, fieldOf(pattern) ?? {}, build).filter((path) => isAssumed(build, path))
    return places.reduce((at, path) => {
      const value = estimateOf(at, path)
      return value === undefined || value === entryAt(at, path) ? at : withEntry(at, path, value)
    }, build)
  }, stored)
}

/** The build with a number that a builder has entered: it is no estimate and no guess of the program's any more. */
export function withoutAssumption(stored: StoredBuild, path: string): StoredBuild {
  const origin = originOf(stored, path)
  return origin === 'assumed' || origin === 'guessed'
    ? withEntry(stored, `origins.${path}`, undefined)
    : stored
}
