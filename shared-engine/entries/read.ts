import { failed, type Mistake, type Result, succeeded } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import { withDerivedDefaults } from './derived.ts'
import { entryTable } from './fields.ts'
import { hostileKeysOf } from './hostile-keys.ts'
import { placeOfJsonError } from './json-place.ts'
import { mostDepth, scanJson } from './json-scan.ts'
import { migrate, type JsonGroup } from './migrate.ts'
import { versionSteps } from './migrations/steps.ts'
import { mistakesOf } from './mistakes.ts'
import { brokenRulesOf } from './rules.ts'
import { type Build, buildFormat, buildSchema, buildVersion, type StoredBuild } from './schema.ts'
import { textOf } from './utf8.ts'

/** 1 MiB: a build is a few kilobytes; what is larger is something else. */
export const mostBytes = 1_048_576

const wholeFile = (code: Mistake['code'], value: string, allowed = ''): Mistake => ({
  code,
  path: '',
  value,
  allowed,
  kept: '',
})

/**
 * The build in a file's bytes, as stored, or every mistake in it at once. What is kept for editing and saving.
 *
 * @param bytes - UTF-8, with or without a byte-order mark, up to 1 MiB
 */
export function readStoredBuild(bytes: Uint8Array): Result<StoredBuild> {
  if (bytes.length > mostBytes) return failed([tooLarge(bytes.length)])
  const text = textOf(bytes)
  return text === null ? failed([wholeFile('not-utf8', '')]) : readStoredBuildText(text)
}

/** The same for a text. */
export function readStoredBuildText(text: string): Result<StoredBuild> {
  const written = text.startsWith('\uFEFF') ? text.slice(1) : text
  if (written.length > mostBytes) return failed([tooLarge(written.length)])
  if (written.trim() === '') return failed([wholeFile('empty-file', '')])
  const scan = scanJson(written)
  if (scan.tooDeep) return failed([wholeFile('too-deep', '', `at most ${mostDepth} levels`)])
  const parsed = parsedJson(written)
  if (!parsed.ok) return parsed
  const twice = scan.duplicates.map((path): Mistake => ({
    code: 'duplicate-key',
    path,
    value: '',
    allowed: '',
    kept: '',
  }))
  const read = readStoredBuildValue(parsed.value)
  if (twice.length === 0) return read
  return failed(read.ok ? twice : [...twice, ...read.mistakes])
}

/** The same for a value that came out of JSON already: a message, a draft of an edit. */
export function readStoredBuildValue(value: unknown): Result<StoredBuild> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return failed([{ ...wholeFile('not-an-object', shown(value)), allowed: 'keys and values in braces' }])
  }
  const { forbidden, tooDeep } = hostileKeysOf(value, mostDepth)
  if (tooDeep) return failed([wholeFile('too-deep', '', `at most ${mostDepth} levels`)])
  const group = value as JsonGroup
  const format = Object.hasOwn(group, 'format') ? group['format'] : undefined
  if (format !== buildFormat) return failed([wrongFormat(format), ...forbidden])
  const current = migrate(group, versionSteps, buildVersion)
  if (!current.ok) return failed([...current.mistakes, ...forbidden])
  return checked(current.value, forbidden)
}

/** The build with every default in force, or every mistake in it at once. */
export function readBuild(bytes: Uint8Array): Result<Build> {
  return completed(readStoredBuild(bytes))
}

/** The same for a text. */
export function readBuildText(text: string): Result<Build> {
  return completed(readStoredBuildText(text))
}

/** The same for a value that came out of JSON already. */
export function readBuildValue(value: unknown): Result<Build> {
  return completed(readStoredBuildValue(value))
}

/** A stored build with every default in force; throws for one that was never read: a bug of ours. */
export function completeBuild(stored: StoredBuild): Build {
  // The rows of what is filled in say that it is there (rows/types.ts).
  return withDerivedDefaults(buildSchema.parse(stored), entryTable.fields) as Build
}

function completed(stored: Result<StoredBuild>): Result<Build> {
  return stored.ok ? succeeded(completeBuild(stored.value)) : stored
}

function checked(build: JsonGroup, forbidden: readonly Mistake[]): Result<StoredBuild> {
  const read = buildSchema.safeParse(build)
  const refused = new Set(forbidden.map((mistake) => mistake.path))
  const entries = read.success
    ? []
    : mistakesOf(read.error.issues, build).filter((mistake) => !refused.has(mistake.path))
  const told = new Set(entries.map((mistake) => mistake.path))
  const between = brokenRulesOf(build).filter(
    (mistake) => !told.has(mistake.path) && !refused.has(mistake.path),
  )
  const mistakes = [...forbidden, ...entries, ...between]
  // The schema has let it through, so that its type is what the schema takes.
  return mistakes.length === 0 ? succeeded(build as StoredBuild) : failed(mistakes)
}

/** What a text in JSON says, or where the parser stopped. */
export function parsedJson(text: string): Result<unknown> {
  try {
    return succeeded(JSON.parse(text) as unknown)
  } catch {
    return failed([wholeFile('not-json', placeOfJsonError(text))])
  }
}

function tooLarge(size: number): Mistake {
  return wholeFile('too-large', `${(size / mostBytes).toFixed(1)} MiB`, 'at most 1 MiB')
}

function wrongFormat(found: unknown): Mistake {
  const value = found === undefined ? '' : shown(found)
  return {
    code: found === undefined ? 'missing' : 'wrong-format',
    path: 'format',
    value,
    allowed: `"${buildFormat}"`,
    kept: '',
  }
}
