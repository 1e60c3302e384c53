import { fieldOf } from '../entries/fields.ts'
import { mostBytes, parsedJson } from '../entries/json-file.ts'
import { isJsonGroup, type JsonGroup } from '../entries/json-group.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { readBuild, readBuildValue } from '../entries/read.ts'
import { migrate } from '../entries/migrate.ts'
import { versionSteps } from '../entries/migrations/steps.ts'
import { buildVersion, type Build } from '../entries/schema.ts'
import { textOf } from '../entries/utf8.ts'
import type { Result } from '../mistakes/mistake.ts'

/** A value with a default written where a tolerance speaks of an entry that is in force by default alone. */
function withSpokenDefaults(value: JsonGroup): JsonGroup {
  let spoken = value
  for (const path of Object.keys(isJsonGroup(value['tolerances']) ? value['tolerances'] : {})) {
    const standard = fieldOf(path)?.default
    const [group = '', name = '', ...deeper] = keysOf(path)
    const holder = spoken[group] ?? {}
    if (typeof standard !== 'number' || deeper.length > 0 || !isJsonGroup(holder)) continue
    if (valueAt(spoken, [group, name]) === undefined)
      spoken = { ...spoken, [group]: { ...holder, [name]: standard } }
  }
  return spoken
}

/**
 * A build beside readings, or every mistake in it. A tolerance may here speak of an entry that is left to its default:
 * what is measured against it is as uncertain as it says.
 */
export function readBuildForReadings(bytes: Uint8Array): Result<Build> {
  const read = readBuild(bytes)
  if (read.ok || bytes.length > mostBytes) return read
  if (!read.mistakes.every(({ code, path }) => code === 'path-not-in-file' && path.startsWith('tolerances.')))
    return read
  const parsed = parsedJson(textOf(bytes) ?? '')
  if (!parsed.ok || !isJsonGroup(parsed.value)) return read
  const current = migrate(parsed.value, versionSteps, buildVersion)
  if (!current.ok || !isJsonGroup(current.value)) return read
  const again = readBuildValue(withSpokenDefaults(current.value))
  return again.ok ? again : read
}
