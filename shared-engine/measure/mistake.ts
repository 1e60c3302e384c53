import type { Mistake } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'

/** A mistake of readings: where, what is allowed there, what was found. */
export const readingMistake = (path: string, allowed: string, found: unknown): Mistake => ({
  code: 'wrong-reading',
  path,
  value: found === undefined ? '' : shown(found),
  allowed,
  kept: '',
})
