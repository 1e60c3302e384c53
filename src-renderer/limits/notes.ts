import { fieldOf } from '../../shared-engine/entries/fields.ts'
import { partName } from '../fields/forms.ts'
import { partOfPath } from '../fields/part-of-path.ts'

/** A sentence of the engine with the names of entries in place of their paths: the window never shows a path. */
export function inWords(note: string): string {
  return note.replace(/\b[a-z]+(?:\.[a-zA-Z0-9]+)+\b/g, (path) => {
    const label = fieldOf(path)?.label
    return label === undefined ? path : `“${label}” (${partName(partOfPath(path))})`
  })
}
