import { placesOf } from './condition.ts'
import { entryReaderOf, standardOf } from './entry-reader.ts'
import { keysOf, patternOf, valueAt } from './path.ts'
import type { Field } from './rows/row.ts'

/**
 * A build with the defaults that other entries decide, in the order of the table: one may rest on another before it.
 * They are values from then on: a build whose entries are changed later is to be completed anew.
 *
 * @param build complete but for them
 * @param fields every entry by its pattern
 */
export function withDerivedDefaults(build: unknown, fields: ReadonlyMap<string, Field>): unknown {
  const whole = copied(build)
  const reader = entryReaderOf(whole, (path) => fields.get(path) ?? fields.get(patternOf(path)))
  for (const [pattern, field] of fields) {
    if (field.defaultFrom === undefined) continue
    for (const path of placesOf(pattern, field, whole)) {
      const keys = keysOf(path)
      if (valueAt(whole, keys) === undefined) put(whole, keys, standardOf(field, reader, path))
    }
  }
  return whole
}

/** A copy whose groups and lists are its own: it is filled in place, which for some forty entries is a third of the work. */
function copied(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copied)
  if (typeof value !== 'object' || value === null) return value
  const own: Record<string, unknown> = { ...value }
  for (const [key, inner] of Object.entries(own)) if (typeof inner === 'object') own[key] = copied(inner)
  return own
}

/** Puts a value into a copy, where there is one and its group is there. */
function put(whole: unknown, keys: readonly string[], value: unknown): void {
  const last = keys.at(-1)
  const group = valueAt(whole, keys.slice(0, -1))
  if (value === undefined || last === undefined || typeof group !== 'object' || group === null) return
  ;(group as Record<string, unknown>)[last] = value
}
