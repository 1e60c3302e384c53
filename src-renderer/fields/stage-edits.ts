import { withEntry } from '../../shared-engine/entries/edit.ts'
import { everyStage } from '../../shared-engine/entries/parts/stages/every.ts'
import type { WheelTeeth } from '../../shared-engine/entries/parts/stages/kind.ts'
import { stageKindIds, stageKinds, type StageKindId } from '../../shared-engine/entries/parts/stages/kinds.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'

type StoredStage = NonNullable<StoredBuild['stages']>[number]

/** Entries that every kind of reduction has. */
const common = Object.keys(everyStage)

/** Another kind for a reduction: what both kinds have stays, what is new is assumed and marked so. */
export function withStageKind(stored: StoredBuild, index: number, word: string): StoredBuild {
  const before = stored.stages?.[index]
  const kind = stageKindIds.find((one) => one === word)
  if (before === undefined || kind === undefined || before.kind === kind) return stored
  const stage = stageOf(kind, before)
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(stage, key))
  const fresh = Object.keys(stage).filter((key) => !Object.hasOwn(before, key))
  const bare = gone.reduce((build, key) => withEntry(build, `stages.${index}.${key}`, undefined), stored)
  return withAssumedStage(withEntry(bare, `stages.${index}`, stage), index, fresh)
}

/** A reduction with entries that nobody has entered, marked so; its kind is a choice and none of them. */
export function withAssumedStage(stored: StoredBuild, index: number, keys: readonly string[]): StoredBuild {
  return keys
    .filter((key) => key !== 'kind')
    .reduce((build, key) => withEntry(build, `origins.stages.${index}.${key}`, 'assumed'), stored)
}

/** A reduction of a kind with no more than the kind has to have. */
function started(kind: StageKindId, teeth: WheelTeeth): StoredStage {
  return { kind, ...stageKinds[kind].start(teeth) } as StoredStage
}

function stageOf(kind: StageKindId, before: StoredStage): StoredStage {
  const from = before as Readonly<Record<string, unknown>>
  const shared = Object.fromEntries(
    common.filter((key) => from[key] !== undefined).map((key) => [key, from[key]]),
  )
  const { driverTeeth, drivenTeeth } = stageKinds[before.kind].teethOf(before)
  return { ...started(kind, { driverTeeth, drivenTeeth }), ...shared }
}

/** A new reduction to start from: one to one, so that it changes nothing until its teeth are entered. */
export function freshStage(): StoredStage {
  return started('gear', { driverTeeth: 20, drivenTeeth: 20 })
}
