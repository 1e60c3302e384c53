import { isListIndex, keysOf, valueAt } from './path.ts'
import type { Condition, Field } from './rows/row.ts'

/**
 * A pattern with the places in lists that a path has.
 */
function patternAt(pattern: string, path: string): string {
  const keys = keysOf(path)
  return pattern
    .split('.')
    .map((key, at) => (key === '*' ? (keys[at] ?? key) : key))
    .join('.')
}

/** Whether a condition holds in a build for the entry at a path. */
export function conditionHolds({ entry, among }: Condition, path: string, build: unknown): boolean {
  const found = valueAt(build, keysOf(patternAt(entry, path)))
  return typeof found === 'string' && among.includes(found)
}

/** Every path of a pattern in a build: as many as the lists on its way have items, none where a part is absent. */
function pathsOfPattern(pattern: string, build: unknown): readonly string[] {
  const keys = pattern.split('.')
  let paths: readonly string[] = ['']
  for (const key of keys.slice(0, -1)) {
    paths = paths.flatMap((path) => {
      const inside = valueAt(build, path === '' ? [] : path.split('.'))
      const found = key === '*' ? placesIn(inside) : [key]
      return found.map((one) => (path === '' ? one : `${path}.${one}`))
    })
  }
  const last = keys.at(-1) ?? ''
  return paths
    .filter((path) => typeof valueAt(build, path === '' ? [] : path.split('.')) === 'object')
    .map((path) => (path === '' ? last : `${path}.${last}`))
}

/** Every path at which a build has an entry or may have it: its part is there, and of a kind that has it. */
export function placesOf(
  pattern: string,
  { onlyWith }: Pick<Field, 'onlyWith'>,
  build: unknown,
): readonly string[] {
  const paths = pathsOfPattern(pattern, build)
  return onlyWith === undefined ? paths : paths.filter((path) => conditionHolds(onlyWith, path, build))
}

function placesIn(list: unknown): readonly string[] {
  return Array.isArray(list) ? Object.keys(list).filter(isListIndex) : []
}
