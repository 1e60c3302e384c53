import { z } from '../reference/zod.ts'
import { type FieldPattern, fieldOf } from './fields.ts'

// Schemas of single entries, with range and default from the table of fields. Which of the three an entry is, is
// spelled out in the schema, since the types of the build depend on it; a test compares it with the table.

/** A number that has to be there. */
export function number(pattern: FieldPattern) {
  const { low, high, whole } = fieldOf(pattern) ?? {}
  if (low === undefined || high === undefined) throw new Error(`${pattern} has no range`)
  // One part where a number, its bounds and its wholeness would be four: a process that reads one build makes the
  // schema for it alone. What is wrong with a value is told from the table, not from the schema (mistakes.ts).
  return z.custom<number>(
    (value) =>
      typeof value === 'number' &&
      value >= low &&
      value <= high &&
      (whole !== true || Number.isInteger(value)),
  )
}

/** A number with the table's default. */
export function numberOr(pattern: FieldPattern) {
  const standard = fieldOf(pattern)?.default
  if (typeof standard !== 'number') throw new Error(`${pattern} has no default`)
  return number(pattern).default(standard)
}

/** A number that may be absent. */
export function maybeNumber(pattern: FieldPattern) {
  return number(pattern).optional()
}

/** A text that has to be there; characters are counted as a reader counts them, not as UTF-16 does. */
export function text(pattern: FieldPattern) {
  const longest = fieldOf(pattern)?.longest ?? Infinity
  return z.string().refine((written) => written.length <= longest || [...written].length <= longest)
}

/** One of the words of a list. */
export function word<const Words extends readonly string[]>(pattern: FieldPattern, words: Words) {
  if (fieldOf(pattern)?.choices === undefined) throw new Error(`${pattern} has no choices`)
  return z.enum(words)
}
