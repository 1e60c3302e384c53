import { withEntry } from '../../shared-engine/entries/edit.ts'
import { everyStage } from '../../shared-engine/entries/parts/stages/every.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { stageKindIds, type StageKindId } from '../../shared-engine/entries/stage-kinds.ts'
import { beltProfileIds, beltProfileOf } from '../../shared-engine/reference/belts.ts'
import { fromEngine } from '../../shared-engine/units/convert.ts'

type StoredStage = NonNullable<StoredBuild['stages']>[number]

/** Entries that every kind of reduction has. */
const common = Object.keys(everyStage)

/** Another kind for a reduction: what both kinds have stays, what is new is a guess and marked as one. */
export function withStageKind(stored: StoredBuild, index: number, word: string): StoredBuild {
  const before = stored.stages?.[index]
  const kind = stageKindIds.find((one) => one === word)
  if (before === undefined || kind === undefined || before.kind === kind) return stored
  const stage = stageOf(kind, before)
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(stage, key))
  const fresh = Object.keys(stage).filter((key) => !Object.hasOwn(before, key))
  const path = (key: string) => `stages.${index}.${key}`
  const bare = gone.reduce((build, key) => withEntry(build, path(key), undefined), stored)
  const changed = withEntry(bare, `stages.${index}`, stage)
  return fresh.reduce((build, key) => withEntry(build, `origins.${path(key)}`, 'guessed'), changed)
}

interface Teeth {
  readonly driverTeeth: number
  readonly drivenTeeth: number
}

/** What a reduction of each kind starts with, beside what every kind has. */
const starts: { readonly [K in StageKindId]: (teeth: Teeth) => Extract<StoredStage, { kind: K }> } = {
  gear: (teeth) => ({
    kind: 'gear',
    ...teeth,
    moduleMm: 1,
    faceWidthMm: 10,
    driverMaterial: 'steel-c45',
    drivenMaterial: 'steel-c45',
  }),
  belt: (teeth) => {
    const profile = beltProfileIds.find((id) => beltProfileOf(id).allowableTension !== null) ?? 'XL'
    const pitchMm = fromEngine(beltProfileOf(profile).pitch, 'length', 'mm')
    const centreMm = Math.ceil(((teeth.driverTeeth + teeth.drivenTeeth) * pitchMm) / 4)
    return { kind: 'belt', ...teeth, profile, widthMm: 15, centreMm }
  },
  chain: (teeth) => ({ kind: 'chain', ...teeth, size: '06B' }),
  fixed: ({ driverTeeth, drivenTeeth }) => ({
    kind: 'fixed',
    ratio: Number((drivenTeeth / driverTeeth).toPrecision(6)),
  }),
}

function stageOf(kind: StageKindId, before: StoredStage): StoredStage {
  const from = before as Readonly<Record<string, unknown>>
  const shared = Object.fromEntries(
    common.filter((key) => from[key] !== undefined).map((key) => [key, from[key]]),
  )
  const { driverTeeth, drivenTeeth } = teethOf(before)
  return { ...starts[kind]({ driverTeeth, drivenTeeth }), ...shared }
}

/** Teeth of a reduction; those of a gearbox are the nearest to its ratio. */
const teeth: { readonly [K in StageKindId]: (stage: Extract<StoredStage, { kind: K }>) => Teeth } = {
  gear: (stage) => stage,
  belt: (stage) => stage,
  chain: (stage) => stage,
  fixed: ({ ratio }) => {
    const driverTeeth = 12
    return { driverTeeth, drivenTeeth: Math.min(1000, Math.max(4, Math.round(driverTeeth * ratio))) }
  },
}

function teethOf(stage: StoredStage): Teeth {
  const of = teeth[stage.kind] as (stage: StoredStage) => Teeth
  return of(stage)
}

/** A new reduction to start from: one to one, so that it changes nothing until its teeth are entered. */
export function freshStage(): StoredStage {
  return starts.gear({ driverTeeth: 20, drivenTeeth: 20 })
}
