import type { JsonGroup } from '../json-group.ts'
import type { MigratedBuild } from '../migrate.ts'
import { valueAt } from '../path.ts'
import { without } from './from-1.ts'

const loadNote =
  'service.loadPercent is left out: version 2 of the build file has none. Currents and heat of a run come from its drive pattern, service.pattern.'

/**
 * A build of the current version without the entry that this version has given up. Files that say version 2 and still
 * carry it are about, written when only the mechanics had been brought up; nothing hangs on it any more.
 */
export function withoutGone(build: JsonGroup): MigratedBuild {
  if (valueAt(build, ['service', 'loadPercent']) === undefined) return { build, notes: [] }
  return { build: without(build, 'service', 'loadPercent'), notes: [loadNote] }
}
