import { placesOf } from './condition.ts'
import { replaced } from './edit.ts'
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
  const derived = [...fields].filter(([, field]) => field.defaultFrom !== undefined)
  return derived.reduce((whole, [pattern, field]) => {
    const reader = entryReaderOf(whole, (path) => fields.get(path) ?? fields.get(patternOf(path)))
    const places = placesOf(pattern, field, whole).filter(
      (path) => valueAt(whole, keysOf(path)) === undefined,
    )
    return places.reduce((at, path) => {
      const value = standardOf(field, reader, path)
      return value === undefined ? at : replaced(at, keysOf(path), value)
    }, whole)
  }, build)
}
