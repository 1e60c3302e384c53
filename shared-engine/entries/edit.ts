import { fieldOf, groups } from './fields.ts'
import { isListIndex, keysOf, patternOf, valueAt } from './path.ts'
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
  const entered = entryAt(stored, path)
  return entered === undefined ? fieldOf(path)?.default : entered
}

/** A group that may be absent whole disappears with its last key; lists and their items stay. */
const mayVanish = (pattern: string) => groups[pattern]?.mayVanish === true

function replaced(at: unknown, keys: readonly string[], value: unknown, path: readonly string[]): unknown {
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
  const edited = replaced(stored, keysOf(path), value, []) as StoredBuild
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

/** A list of a build that a builder adds to and takes from. */
export type ListName = 'stages' | 'accessories'

/** Rebuilds a list by old places, and lets tolerances and origins follow; `null` is the new item. */
function rearranged(
  stored: StoredBuild,
  name: ListName,
  places: readonly (number | null)[],
  added?: unknown,
): StoredBuild {
  const old: readonly unknown[] = stored[name] ?? []
  const list = places.map((place) => (place === null ? added : old[place]))
  const follow = (path: string): string | null => {
    const [group, place, ...rest] = keysOf(path)
    if (group !== name || place === undefined) return path
    const now = places.indexOf(Number(place))
    return now < 0 ? null : [name, String(now), ...rest].join('.')
  }
  return withSpokenPaths(withEntry(stored, name, list), follow)
}

const placesOf = (stored: StoredBuild, name: ListName): number[] => (stored[name] ?? []).map((_, at) => at)

/** A build with an item more in a list: at a place, or at the end. */
export function withItem(stored: StoredBuild, name: ListName, item: unknown, at = Infinity): StoredBuild {
  const places = placesOf(stored, name)
  const rank = Math.min(Math.max(at, 0), places.length)
  return rearranged(stored, name, [...places.slice(0, rank), null, ...places.slice(rank)], item)
}

/** A build without an item of a list; its tolerances and origins go with it, those of later items follow. */
export function withoutItem(stored: StoredBuild, name: ListName, at: number): StoredBuild {
  return rearranged(
    stored,
    name,
    placesOf(stored, name).filter((place) => place !== at),
  )
}

/** A build with an item of a list in another place. */
export function withItemMoved(stored: StoredBuild, name: ListName, from: number, to: number): StoredBuild {
  const places = placesOf(stored, name)
  if (places[from] === undefined) return stored
  const rest = places.filter((place) => place !== from)
  const rank = Math.min(Math.max(to, 0), rest.length)
  return rearranged(stored, name, [...rest.slice(0, rank), from, ...rest.slice(rank)])
}
