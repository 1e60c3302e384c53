import { failed, type Mistake, type Result, succeeded } from '../mistakes/mistake.ts'
import { withDerivedDefaults } from './derived.ts'
import { entryTable } from './fields.ts'
import { readJsonFile, readJsonText, soundGroupOf, wrongFormatOf } from './json-file.ts'
import type { JsonGroup } from './json-group.ts'
import { migrate } from './migrate.ts'
import { withoutGone } from './migrations/gone.ts'
import { versionSteps } from './migrations/steps.ts'
import { mistakesOf } from './mistakes.ts'
import { brokenRulesOf } from './rules.ts'
import { type Build, buildFormat, buildSchema, buildVersion, type StoredBuild } from './schema.ts'

/**
 * The build in a file's bytes, as stored, or every mistake in it at once. What is kept for editing and saving.
 *
 * @param bytes - UTF-8, with or without a byte-order mark, up to 1 MiB
 */
export function readStoredBuild(bytes: Uint8Array): Result<StoredBuild> {
  return readJsonFile(bytes, buildReader)
}

/** The same for a text. */
export function readStoredBuildText(text: string): Result<StoredBuild> {
  return readJsonText(text, buildReader)
}

/** The same for a value that came out of JSON already: a message, a draft of an edit. */
export function readStoredBuildValue(value: unknown): Result<StoredBuild> {
  const sound = soundGroupOf(value)
  if (!sound.ok) return sound
  const { group, forbidden } = sound.value
  const other = wrongFormatOf(group, buildFormat, 'wrong-format')
  if (other !== null) return failed([other, ...forbidden])
  const current = migrate(group, versionSteps, buildVersion)
  if (!current.ok) return failed([...current.mistakes, ...forbidden])
  const { build, notes } = withoutGone(current.value)
  return checked(build, forbidden, [...(current.notes ?? []), ...notes])
}

const buildReader = { valueFrom: readStoredBuildValue, empty: 'empty-file' } as const

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
  return withDerivedDefaults(buildSchema().parse(stored), entryTable.fields) as Build
}

function completed(stored: Result<StoredBuild>): Result<Build> {
  return stored.ok ? succeeded(completeBuild(stored.value), stored.notes) : stored
}

function checked(
  build: JsonGroup,
  forbidden: readonly Mistake[],
  notes?: readonly string[],
): Result<StoredBuild> {
  const read = buildSchema().safeParse(build)
  const refused = new Set(forbidden.map((mistake) => mistake.path))
  const entries = read.success
    ? []
    : mistakesOf(read.error.issues, build).filter((mistake) => !refused.has(mistake.path))
  const named = new Set(entries.map((mistake) => mistake.path))
  const between = brokenRulesOf(build).filter(
    (mistake) => !named.has(mistake.path) && !refused.has(mistake.path),
  )
  const mistakes = [...forbidden, ...entries, ...between]
  // The schema has let it through, so that its type is what the schema takes.
  return mistakes.length === 0 ? succeeded(build as StoredBuild, notes) : failed(mistakes)
}
