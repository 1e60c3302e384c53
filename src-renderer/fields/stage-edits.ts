import { withEntry } from '../../shared-engine/entries/edit.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { beltProfileIds, beltProfileOf } from '../../shared-engine/reference/belts.ts'
import { fromEngine } from '../../shared-engine/units/convert.ts'

type StoredStage = NonNullable<StoredBuild['stages']>[number]
type Kind = StoredStage['kind']

const kinds: readonly Kind[] = ['gear', 'belt', 'chain', 'fixed']

/** Entries that every kind of reduction has. */
const common = ['efficiencyPercent', 'shaftDiameterMm', 'shaftMaterial', 'drivenInertiaGcm2'] as const

/** Another kind for a reduction: what both kinds have stays, what is new is a guess and marked as one. */
export function withStageKind(stored: StoredBuild, index: number, word: string): StoredBuild {
  const before = stored.stages?.[index]
  const kind = kinds.find((one) => one === word)
  if (before === undefined || kind === undefined || before.kind === kind) return stored
  const stage = stageOf(kind, before)
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(stage, key))
  const fresh = Object.keys(stage).filter((key) => !Object.hasOwn(before, key))
  const path = (key: string) => `stages.${index}.${key}`
  const bare = gone.reduce((build, key) => withEntry(build, path(key), undefined), stored)
  const changed = withEntry(bare, `stages.${index}`, stage)
  return fresh.reduce((build, key) => withEntry(build, `origins.${path(key)}`, 'guessed'), changed)
}

function stageOf(kind: Kind, before: StoredStage): StoredStage {
  const from = before as Readonly<Record<string, unknown>>
  const shared = Object.fromEntries(
    common.filter((key) => from[key] !== undefined).map((key) => [key, from[key]]),
  )
  const { driverTeeth, drivenTeeth } = teethOf(before)
  if (kind === 'fixed') return { kind, ratio: Number((drivenTeeth / driverTeeth).toPrecision(6)), ...shared }
  const toothed = { driverTeeth, drivenTeeth, ...shared }
  if (kind === 'gear') {
    const material = 'steel-c45' as const
    return {
      kind,
      ...toothed,
      moduleMm: 1,
      faceWidthMm: 10,
      driverMaterial: material,
      drivenMaterial: material,
    }
  }
  if (kind === 'belt') {
    const profile = beltProfileIds.find((id) => beltProfileOf(id).allowableTension !== null) ?? 'XL'
    const pitchMm = fromEngine(beltProfileOf(profile).pitch, 'length', 'mm')
    const centreMm = Math.ceil(((driverTeeth + drivenTeeth) * pitchMm) / 4)
    return { kind, ...toothed, profile, widthMm: 15, centreMm }
  }
  return { kind, ...toothed, size: '06B' }
}

/** Teeth of a reduction; those of a gearbox are the nearest to its ratio. */
function teethOf(stage: StoredStage): { driverTeeth: number; drivenTeeth: number } {
  if (stage.kind !== 'fixed') return stage
  const driverTeeth = 12
  return { driverTeeth, drivenTeeth: Math.min(1000, Math.max(4, Math.round(driverTeeth * stage.ratio))) }
}

/** A new reduction to start from: one to one, so that it changes nothing until its teeth are entered. */
export function freshStage(): StoredStage {
  return {
    kind: 'gear',
    driverTeeth: 20,
    drivenTeeth: 20,
    moduleMm: 1,
    faceWidthMm: 10,
    driverMaterial: 'steel-c45',
    drivenMaterial: 'steel-c45',
  }
}
