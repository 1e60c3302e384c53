import type { Checked } from '../check.ts'
import { entryAt } from '../entries/edit.ts'
import type { LimitId } from '../limits/id.ts'
import { limitsOf } from '../limits/table.ts'

/** An entry that limits wait for. */
interface WaitedFor {
  readonly path: string
  /** Limits that it brings, or helps to bring. */
  readonly limits: readonly LimitId[]
}

/**
 * Entries without which limits cannot be formed, with those limits; those that most wait for first.
 *
 * @param checked a build that was read
 */
export function waitedFor(checked: Checked): readonly WaitedFor[] {
  const formed = new Set<LimitId>(checked.limits.map(({ id }) => id))
  const waits = new Map<string, LimitId[]>()
  for (const { id, needs, lacking } of limitsOf(checked.machine)) {
    if (formed.has(id)) continue
    // One that is never listed as not judged, or that cannot apply, waits for its entries all the same.
    for (const path of lacking(checked.build, checked.evaluation) ?? needs)
      if (entryAt(checked.build, path) === undefined) waits.set(path, [...(waits.get(path) ?? []), id])
  }
  return [...waits]
    .map(([path, limits]) => ({ path, limits }))
    .sort((one, other) => other.limits.length - one.limits.length)
}
