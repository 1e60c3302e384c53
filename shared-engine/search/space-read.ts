import { readJsonFile, readJsonText, soundGroupOf, wrongFormatOf } from '../entries/json-file.ts'
import { valueAt } from '../entries/path.ts'
import type { MistakeCode } from '../mistakes/catalogue.ts'
import { failed, succeeded, mistakeAt, type Mistake, type Result } from '../mistakes/mistake.ts'
import type { z } from '../reference/zod.ts'
import { mostKept, spaceFormat, spaceSchema, spaceVersion, type StoredSpace } from './space-schema.ts'

type Issue = z.core.$ZodIssue

/** What stands at each place of a space, for sentences; `*` is any key. The first that fits is named. */
const places: readonly (readonly [pattern: string, what: string])[] = [
  ['format', `"${spaceFormat}"`],
  ['version', `${spaceVersion}`],
  ['name', 'text of at most 120 characters'],
  ['notes', 'text of at most 10,000 characters'],
  ['owned', 'lists of teeth, each under its name'],
  ['owned.*', 'a list of numbers of teeth'],
  ['owned.*.*', 'a number of teeth'],
  ['vary', 'entries of the build, each with the values to try'],
  ['vary.motor', 'a list of motors, each with "name" and "motor", the build’s whole group'],
  ['vary.motor.*.name', 'text of at most 120 characters'],
  ['vary.*.from', 'the first value'],
  ['vary.*.to', 'the last value'],
  ['vary.*.step', 'the step from one value to the next'],
  ['vary.*', 'a list of values, { "from", "to", "step" }, or the name of a list in "owned"'],
  ['vary.*.*', 'a number'],
  ['hold', '"margins" and "figures"'],
  ['hold.margins', 'ids of limits, each with its least margin'],
  ['hold.margins.*', '−10 to 1 (0.2 keeps 20 % in hand), or null to leave the limit out'],
  ['hold.figures', 'a list of at most 40 bounds'],
  ['hold.figures.*', 'a bound: "figure" with "atLeast" or "atMost"'],
  ['hold.figures.*.figure', 'the name of a figure'],
  ['hold.figures.*.*', 'a number, or a quantity with its unit'],
  ['aim', 'a figure with "best", or a list of one or two'],
  ['aim.best', 'most or least'],
  ['aim.*.best', 'most or least'],
  ['aim.figure', 'the name of a figure'],
  ['aim.*.figure', 'the name of a figure'],
  ['map', 'a list of two figures'],
  ['map.*.figure', 'the name of a figure'],
  ['keep', `a whole number, 1 to ${mostKept}`],
]

/** Keys of a place in a space: what is varied and what is held are keyed by paths, which are one key each. */
function pathOf(keys: readonly PropertyKey[]): string {
  return keys.map(String).join('.')
}

function allowedAt(keys: readonly PropertyKey[]): string {
  const named = keys.map(String)
  const fits = (pattern: string) => {
    const parts = pattern.split('.')
    return parts.length === named.length && parts.every((part, at) => part === '*' || part === named[at])
  }
  return places.find(([pattern]) => fits(pattern))?.[1] ?? ''
}

function codeOf(value: unknown, issue: Issue): MistakeCode {
  if (value === undefined) return 'missing'
  switch (issue.code) {
    case 'invalid_type':
      if (issue.expected === 'number' || issue.expected === 'int') return 'not-a-number'
      if (issue.expected === 'string') return 'not-text'
      return issue.expected === 'array' ? 'not-a-list' : 'not-an-object'
    case 'too_big':
    case 'too_small':
      if (issue.origin === 'string') return issue.code === 'too_big' ? 'too-long' : 'missing'
      return issue.origin === 'array' ? 'wrong-length' : 'out-of-range'
    case 'invalid_value':
      return 'not-one-of'
    default:
      return 'wrong-shape'
  }
}

/** Depth to which the issues of a branch got into the value. */
const depthOf = (issues: readonly Issue[]) => Math.max(...issues.map((issue) => issue.path.length))

/** The branch of a union that was meant: of those that fit from outside, the one that got furthest, then the fewest troubles. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  return branches
    .filter(
      (issues) =>
        issues.length > 0 &&
        issues.every((issue) => issue.path.length > 0 || issue.code === 'unrecognized_keys'),
    )
    .toSorted((one, other) => depthOf(other) - depthOf(one) || one.length - other.length)[0]
}

function mistakesOf(issue: Issue, input: unknown, above: readonly PropertyKey[]): Mistake[] {
  const keys = [...above, ...issue.path]
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) =>
      mistakeAt('unknown-space-key', pathOf([...keys, key]), undefined, allowedAt(keys)),
    )
  }
  if (issue.code === 'invalid_union') {
    const meant = branchMeant(issue.errors)
    if (meant !== undefined) return meant.flatMap((inner) => mistakesOf(inner, input, keys))
  }
  const value = valueAt(input, keys.map(String))
  return [mistakeAt(codeOf(value, issue), pathOf(keys), value, allowedAt(keys))]
}

/** A space in a file's bytes, or every mistake in it at once; whether it fits a build is `planOf`'s to say. */
export function readSpace(bytes: Uint8Array): Result<StoredSpace> {
  return readJsonFile(bytes, spaceReader)
}

/** The same for a text. */
export function readSpaceText(text: string): Result<StoredSpace> {
  return readJsonText(text, spaceReader)
}

/** The same for a value that came out of JSON already: a message, the page's own form. */
export function readSpaceValue(value: unknown): Result<StoredSpace> {
  const sound = soundGroupOf(value)
  if (!sound.ok) return sound
  const { group, forbidden } = sound.value
  if (forbidden.length > 0) return failed(forbidden)
  const head = wrongFormatOf(group, spaceFormat, 'not-a-space') ?? newerVersionOf(group['version'])
  if (head !== null) return failed([head])
  const read = spaceSchema.safeParse(value)
  if (read.success) return succeeded(read.data)
  return failed(read.error.issues.flatMap((issue) => mistakesOf(issue, value, [])))
}

const spaceReader = { valueFrom: readSpaceValue, empty: 'not-json' } as const

/** A file of a later version: the rest of it is not worth reading. */
function newerVersionOf(version: unknown): Mistake | null {
  if (typeof version !== 'number' || !Number.isInteger(version) || version <= spaceVersion) return null
  return mistakeAt('newer-version', 'version', version, `up to ${spaceVersion}`)
}
