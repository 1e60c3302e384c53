import type { Mistake } from '../mistakes/mistake.ts'
import { type EntryReader, shownEntry } from './entry-reader.ts'

/** A rule between entries: what is wrong with them, nothing where they are in order or not all there. */
export type Rule = (entries: EntryReader) => Mistake[]

/** Two entries that do not go together: the one to look at first, and what the other lets it be. */
export function broken(path: string, value: number, allowed: string): Mistake[] {
  return [{ code: 'between-fields', path, value: shownEntry(path, value), allowed, kept: '' }]
}
