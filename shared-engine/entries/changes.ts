import { fieldOf, groups } from './fields.ts'
import { keysOf, patternOf, valueAt } from './path.ts'
import type { StoredBuild } from './schema.ts'

/** An entry that two builds do not share. */
export interface ChangedEntry {
  readonly path: string
  /** With its part: "Reduction 1: Driver’s teeth". */
  readonly label: string
  /** As stored, in the bench unit; undefined where nothing is entered. A tolerance is its whole group. */
  readonly before: unknown
  readonly after: unknown
}

/**
 * What was entered otherwise in a build than in another, name, notes, tolerances and origins included. The order is that
 * of `after`; what only `before` has comes last. No default is filled in: an entry that says what would be so anyway is
 * an entry.
 */
export function changedEntries(before: StoredBuild, after: StoredBuild): ChangedEntry[] {
  const whole = (path: string) => path.startsWith('tolerances.')
  const paths = new Set([...leavesOf(after, whole), ...leavesOf(before, whole)])
  return [...paths].flatMap((path) => {
    const keys = keysOf(path)
    const [old, now] = [valueAt(before, keys), valueAt(after, keys)]
    if (JSON.stringify(old) === JSON.stringify(now)) return []
    return [{ path, label: entryLabelOf(path), before: old, after: now }]
  })
}

/** Paths of all entries of a build, in their order; a group that is `whole` is one. */
export function leavesOf(
  value: unknown,
  whole: (path: string) => boolean = () => false,
  path = '',
): string[] {
  if (typeof value !== 'object' || value === null || whole(path)) return [path]
  return Object.entries(value).flatMap(([key, inner]) =>
    inner === undefined ? [] : leavesOf(inner, whole, path === '' ? key : `${path}.${key}`),
  )
}

/**
 * What an entry is called, with the part that it belongs to; places in lists count from 1.
 *
 * @example entryLabelOf('stages.0.driverTeeth') // 'Reduction 1: Driver’s teeth'
 */
export function entryLabelOf(path: string): string {
  const keys = keysOf(path)
  const [first, spoken] = keys
  const label = fieldOf(path)?.label ?? keys.at(-1) ?? path
  if (spoken !== undefined && (first === 'tolerances' || first === 'origins')) {
    const what = first === 'tolerances' && keys.length === 2 ? 'tolerance' : label.toLowerCase()
    return `${entryLabelOf(spoken)} (${what})`
  }
  const group = groups[patternOf(keys.slice(0, -1).join('.'))]?.label
  const place = keys.slice(0, -1).findLast((key) => /^\d+$/.test(key))
  const numbered = group === undefined || place === undefined ? group : `${group} ${Number(place) + 1}`
  return numbered === undefined ? label : `${numbered}: ${label}`
}
