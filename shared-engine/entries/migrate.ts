import { failed, type Result, succeeded } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import type { JsonGroup } from './json-group.ts'

/** A build of the next version, and what to say of the change. */
export interface MigratedBuild {
  readonly build: JsonGroup
  readonly notes: readonly string[]
}

/** Turns a build of one version into one of the next: a new value, the old one untouched. */
export type VersionStep = (older: JsonGroup) => MigratedBuild

/** For each version but the current one, the step that leads out of it. */
export type VersionSteps = ReadonlyMap<number, VersionStep>

/**
 * Brings a build step by step to the current version.
 *
 * @param build - with a `version` of its own
 * @param steps - one for every version before `current`
 * @param current - the version that this program writes
 * @returns the build with its version set, and what each step has to say of it; a mistake for a newer version, for one that never was, for none at all
 */
export function migrate(build: JsonGroup, steps: VersionSteps, current: number): Result<JsonGroup> {
  const found = build['version']
  const mistake = { path: 'version', value: found === undefined ? '' : shown(found), kept: '' }
  const allowed = `a whole number, 1 to ${current}`
  if (found === undefined) return failed([{ code: 'missing', ...mistake, allowed }])
  if (typeof found !== 'number' || Number.isNaN(found))
    return failed([{ code: 'not-a-number', ...mistake, allowed }])
  if (found > current && Number.isInteger(found))
    return failed([{ code: 'newer-version', ...mistake, allowed: `up to ${current}` }])
  if (found < 1 || !Number.isInteger(found)) return failed([{ code: 'out-of-range', ...mistake, allowed }])
  let brought = build
  const notes: string[] = []
  for (let version = found; version < current; version += 1) {
    const step = steps.get(version)
    if (step === undefined) throw new Error(`no step from version ${version} of the build`)
    const next = step(brought)
    brought = { ...next.build, version: version + 1 }
    notes.push(...next.notes)
  }
  return succeeded(brought, notes)
}
