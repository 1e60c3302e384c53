import type { MistakeCode } from '../mistakes/catalogue.ts'
import { mistakeAt, type Mistake } from '../mistakes/mistake.ts'
import type { z } from '../reference/zod.ts'
import { allowedOf, type Field, fieldOf, groups } from './fields.ts'
import { isJsonGroup } from './json-group.ts'
import { patternOf, valueAt } from './path.ts'

type Issue = z.core.$ZodIssue

/** What is wrong with the value of an entry that did not pass. */
function entryMistake(path: string, field: Field, value: unknown): Mistake {
  return mistakeAt(entryCode(field, value), path, value, allowedOf(field))
}

function entryCode(field: Field, value: unknown): MistakeCode {
  if (value === undefined) return 'missing'
  if (field.choices !== undefined) return field.fromTable === true ? 'not-in-table' : 'not-one-of'
  if (field.document === true) return isJsonGroup(value) ? 'too-long' : 'not-an-object'
  if (field.flag === true) return 'not-one-of'
  if (field.kind === 'text') return typeof value === 'string' ? 'too-long' : 'not-text'
  return typeof value === 'number' && !Number.isNaN(value) ? 'out-of-range' : 'not-a-number'
}

/** What is wrong with the value of a group or list that did not pass. */
function groupMistake(path: string, value: unknown): Mistake {
  const { label = '', most } = groups[patternOf(path)] ?? {}
  if (value === undefined) return mistakeAt('missing', path, value, `the group “${label}”`)
  if (most === undefined) return mistakeAt('not-an-object', path, value, 'keys and values in braces')
  if (!Array.isArray(value)) return mistakeAt('not-a-list', path, value, `a list of at most ${most}`)
  return mistakeAt('too-many', path, value, `at most ${most}`)
}

/** Checks one entry by the table of fields alone, where the schema could not decide which entries belong there. */
function looseMistake(path: string, value: unknown): Mistake | null {
  const field = fieldOf(path)
  if (field === undefined) return patternOf(path) in groups ? null : unknownKey(path, value)
  if (field.choices !== undefined) {
    return field.choices.some((choice) => choice.value === value) ? null : entryMistake(path, field, value)
  }
  if (field.flag === true) return typeof value === 'boolean' ? null : entryMistake(path, field, value)
  const { low = -Infinity, high = Infinity } = field
  const fits =
    typeof value === 'number' &&
    value >= low &&
    value <= high &&
    (field.whole !== true || Number.isInteger(value))
  return fits || field.kind === 'text' ? null : entryMistake(path, field, value)
}

function unknownKey(path: string, value: unknown): Mistake {
  const only = fieldOf(path)?.onlyWith
  const allowed =
    only === undefined
      ? 'only the entries of a build'
      : `only where ${lastOf(only.entry)} is ${only.among.join(' or ')}`
  return mistakeAt('unknown-key', path, value, allowed)
}

const lastOf = (path: string) => path.slice(path.lastIndexOf('.') + 1)
const below = (path: string, key: string) => (path === '' ? key : `${path}.${key}`)

/** The kind of a reduction, of a ground, of a material is wrong: its neighbours are checked as far as can be. */
function neighbourMistakes(path: string, issue: Issue, input: unknown): Mistake[] {
  const keys = issue.path.map(String)
  const group = valueAt(input, keys.slice(0, -1))
  if (!isJsonGroup(group)) return []
  const parent = keys.slice(0, -1).join('.')
  return Object.entries(group)
    .filter(([key]) => below(parent, key) !== path)
    .map(([key, value]) => looseMistake(below(parent, key), value))
    .filter((mistake) => mistake !== null)
}

function mistakesOfIssue(issue: Issue, input: unknown): Mistake[] {
  const path = issue.path.map(String).join('.')
  const value = valueAt(input, issue.path.map(String))
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownKey(below(path, key), valueAt(value, [key])))
  }
  const field = fieldOf(path)
  const mistake = field === undefined ? groupMistake(path, value) : entryMistake(path, field, value)
  return issue.code === 'invalid_union' ? [mistake, ...neighbourMistakes(path, issue, input)] : [mistake]
}

/** Everything that the schema found, one mistake for each place, as sentences of the catalogue. */
export function mistakesOf(issues: readonly Issue[], input: unknown): Mistake[] {
  const byPath = new Map<string, Mistake>()
  for (const mistake of issues.flatMap((issue) => mistakesOfIssue(issue, input))) {
    if (!byPath.has(mistake.path)) byPath.set(mistake.path, mistake)
  }
  return [...byPath.values()]
}
