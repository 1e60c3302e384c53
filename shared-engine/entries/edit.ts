import { entryReaderOf, standardOf } from './entry-reader.ts'
import { fieldOf, groups } from './fields.ts'
import { isListIndex, keysOf, patternOf, valueAt } from './path.ts'
import type { buildRows } from './parts/build.ts'
import type { ListsOf } from './rows/types.ts'
import type { StoredBuild } from './schema.ts'

// Edits give a new build and leave the old one as it was. They do not check: the page reads the result with
// `readStoredBuildValue` and keeps the old build in force where that finds mistakes.

type Group = Readonly<Record<string, unknown>>

/** What a build holds at a path; undefined where nothing was entered. */
export function entryAt(stored: StoredBuild, path: string): unknown {
  return valueAt(stored, keysOf(path))
}

/** What is in force at a path: the entry, or its default. */
export function entryInForce(stored: StoredBuild, path: string): unknown {
  const [entered, field] = [entryAt(stored, path), fieldOf(path)]
  if (entered !== undefined || field === undefined) return entered
  return standardOf(field, entryReaderOf(stored), path)
}

/** A group that may be absent whole disappears with its last key; lists and their items stay. */
const mayVanish = (pattern: string) => groups[pattern]?.mayVanish === true

/** A value with another one at keys inside it; what lies beside is shared with the old one. */
export function replaced(
  at: unknown,
  keys: readonly string[],
  value: unknown,
  path: readonly string[] = [],
): unknown {
  const [key, ...rest] = keys
  if (key === undefined) return value
  const here = [...path, key]
  if (Array.isArray(at)) {
    const items: unknown[] = [...(at as readonly unknown[])]
    if (isListIndex(key) && Number(key) < items.length)
      items[Number(key)] = replaced(items[Number(key)], rest, value, here)
    return items
  }
  const group = (typeof at === 'object' && at !== null ? at : {}) as Group
  const inner = replaced(Object.hasOwn(group, key) ? group[key] : undefined, rest, value, here)
  const kept = Object.entries(group).filter(([name]) => name !== key)
  if (inner === undefined) {
    const emptied = kept.length === 0 && path.length > 0 && mayVanish(patternOf(path.join('.')))
    return emptied ? undefined : Object.fromEntries(kept)
  }
  return Object.fromEntries(
    Object.hasOwn(group, key) ? Object.entries({ ...group, [key]: inner }) : [...kept, [key, inner]],
  )
}

/**
 * A build with another value at a path; groups on the way are made where they are missing. `undefined` takes the entry
 * out, with its tolerance and its origin, and the group that held nothing else where that may be absent whole.
 *
 * @example withEntry(stored, 'controller.burstAmps', 90)
 */
export function withEntry(stored: StoredBuild, path: string, value: unknown): StoredBuild {
  const edited = replaced(stored, keysOf(path), value) as StoredBuild
  return value === undefined
    ? withoutEvidence(edited, (spoken) => spoken !== path && !spoken.startsWith(`${path}.`))
    : edited
}

/** Tolerances and origins of which the path passes. */
function withoutEvidence(stored: StoredBuild, keep: (path: string) => boolean): StoredBuild {
  return withSpokenPaths(stored, (path) => (keep(path) ? path : null))
}

/** Tolerances and origins under other paths; `null` drops one. */
function withSpokenPaths(stored: StoredBuild, moved: (path: string) => string | null): StoredBuild {
  const edited: Record<string, unknown> = { ...stored }
  for (const name of ['tolerances', 'origins'] as const) {
    const spoken = stored[name]
    if (spoken === undefined) continue
    const entries = Object.entries(spoken).map(([path, value]) => [moved(path), value] as const)
    if (entries.every(([path], at) => path === Object.keys(spoken)[at])) continue
    const left = entries.filter(([path]) => path !== null)
    if (left.length === 0) delete edited[name]
    else edited[name] = Object.fromEntries(left)
  }
  return edited as StoredBuild
}

/** A list of a build that a builder adds to and takes from, by its path. */
export type ListPath = ListsOf<typeof buildRows>

const itemsOf = (stored: StoredBuild, list: ListPath): readonly unknown[] => {
  const items = entryAt(stored, list)
  return Array.isArray(items) ? (items as readonly unknown[]) : []
}

/** Rebuilds a list by old places, and lets tolerances and origins follow; `null` is the new item. */
function rearranged(
  stored: StoredBuild,
  list: ListPath,
  places: readonly (number | null)[],
  added?: unknown,
): StoredBuild {
  const old = itemsOf(stored, list)
  const items = places.map((place) => (place === null ? added : old[place]))
  const above = keysOf(list)
  const follow = (path: string): string | null => {
    const keys = keysOf(path)
    const place = keys[above.length]
    if (place === undefined || above.some((key, at) => keys[at] !== key)) return path
    const now = places.indexOf(Number(place))
    return now < 0 ? null : [list, String(now), ...keys.slice(above.length + 1)].join('.')
  }
  return withSpokenPaths(withEntry(stored, list, items), follow)
}

const placesOf = (stored: StoredBuild, list: ListPath): number[] => itemsOf(stored, list).map((_, at) => at)

/** A build with an item more in a list: at a place, or at the end. */
export function withItem(stored: StoredBuild, list: ListPath, item: unknown, at = Infinity): StoredBuild {
  const places = placesOf(stored, list)
  const rank = Math.min(Math.max(at, 0), places.length)
  return rearranged(stored, list, [...places.slice(0, rank), null, ...places.slice(rank)], item)
}

/** A build without an item of a list; its tolerances and origins go with it, those of later items follow. */
export function withoutItem(stored: StoredBuild, list: ListPath, at: number): StoredBuild {
  return rearranged(
    stored,
    list,
    placesOf(stored, list).filter((place) => place !== at),
  )
}

/** A build with an item of a list in another place. */
export function withItemMoved(stored: StoredBuild, list: ListPath, from: number, to: number): StoredBuild {
  const places = placesOf(stored, list)
  if (places[from] === undefined) return stored
  const rest = places.filter((place) => place !== from)
  const rank = Math.min(Math.max(to, 0), rest.length)
  return rearranged(stored, list, [...rest.slice(0, rank), from, ...rest.slice(rank)])
}
