import { changedEntries, type ChangedEntry } from '../../shared-engine/entries/changes.ts'
import { readStoredBuild, readStoredBuildText } from '../../shared-engine/entries/read.ts'
import type { RecoveredWork } from '../host/host.ts'

/**
 * What recovered work holds otherwise than its file as it is now.
 *
 * @returns null where there is nothing to compare: no file, or one of the two is not a build
 */
export function recoveredChanges({ file, text }: RecoveredWork): readonly ChangedEntry[] | null {
  if (file === null) return null
  const [saved, recovered] = [readStoredBuild(file.bytes), readStoredBuildText(text)]
  return saved.ok && recovered.ok ? changedEntries(saved.value, recovered.value) : null
}
