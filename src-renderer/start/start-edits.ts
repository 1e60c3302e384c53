import { isAssumed, withAssumed, withoutAssumption } from '../../shared-engine/assume/assumed.ts'
import { newBuild } from '../../shared-engine/assume/start.ts'
import { entryAt, withEntry, withItem, withoutItem } from '../../shared-engine/entries/edit.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import type { StageKindId } from '../../shared-engine/entries/parts/stages/kinds.ts'
import { withStageKind } from '../fields/stage-edits.ts'
import type { TypedReduction } from './typed.ts'

/** The build with an entry left open again: its estimate stands in, or the number of a new build. */
export function leftOpen(stored: StoredBuild, path: string): StoredBuild {
  const value = entryAt(newBuild(), path)
  // What is estimated is estimated anew as soon as it is marked.
  return typeof value === 'number' || typeof value === 'string' ? withAssumed(stored, path, value) : stored
}

/** Whether a reduction is still the one that stands in until one is entered. */
export function isOpenStage(stored: StoredBuild, index: number): boolean {
  return isAssumed(stored, `stages.${index}.ratio`)
}

/** How many reductions the builder has entered. */
export function enteredStages(stored: StoredBuild): number {
  return (stored.stages ?? []).filter((_, index) => !isOpenStage(stored, index)).length
}

/** The build with a reduction as typed: in place of the one that stands in, changed, or added behind the others. */
export function withReduction(
  stored: StoredBuild,
  index: number,
  kind: StageKindId,
  typed: TypedReduction,
): StoredBuild {
  const isThere = index < (stored.stages?.length ?? 0)
  const ratio = { kind: 'fixed', ratio: 1 } as const
  const whole = isThere ? stored : withItem(stored, 'stages', ratio, index)
  const wanted: StageKindId = 'ratio' in typed ? 'fixed' : kind === 'fixed' ? 'gear' : kind
  const fresh = withStageKind(whole, index, wanted)
  return Object.entries(typed).reduce<StoredBuild>((build, [key, value]) => {
    const path = `stages.${index}.${key}`
    return withEntry(withoutAssumption(build, path), path, value)
  }, fresh)
}

/** The build without a reduction; the last one makes way for the one that stands in. */
export function withoutReduction(stored: StoredBuild, index: number): StoredBuild {
  if ((stored.stages?.length ?? 0) > 1) return withoutItem(stored, 'stages', index)
  const bare = withItem(withoutItem(stored, 'stages', index), 'stages', { kind: 'fixed', ratio: 10 }, 0)
  return withEntry(bare, 'origins.stages.0.ratio', 'assumed')
}
