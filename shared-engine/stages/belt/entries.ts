import { beltProfileIds, beltProfileOf, type BeltProfileId } from '../../reference/belts.ts'
import type { EntryReader } from '../../entries/entry-reader.ts'
import type { StageKindEntries } from '../../entries/parts/stages/kind.ts'
import type { Rows } from '../../entries/rows/group.ts'
import { fromEngine } from '../../units/convert.ts'
import { pulleyRadius } from './geometry.ts'
import { centreRow, everyStage, wheelRows } from '../../entries/parts/stages/every.ts'

export const beltRows = {
  ...wheelRows,
  ...everyStage,
  profile: {
    label: 'Belt profile',
    kind: 'text',
    choices: beltProfileIds.map((value) => ({ value, label: value })),
    fromTable: true,
    help: 'The tooth form and pitch, as printed on the belt.',
  },
  widthMm: {
    label: 'Belt width',
    section: 'Strength',
    kind: 'length',
    low: 1,
    high: 500,
    lever: { step: 1, times: 3 },
    help: 'Width of the belt itself.',
  },
  allowableTensionN: {
    label: 'Allowable tension',
    section: 'Strength',
    kind: 'force',
    low: 1,
    high: 1e6,
    optional: true,
    help: 'The maker’s working tension for this width. Needed for a profile without an open rating; wins over the table.',
    brings: 'The belt’s limit where its profile has no open rating.',
  },
  centreMm: centreRow,
} as const satisfies Rows

function profileOf(entries: EntryReader, stage: string): BeltProfileId | undefined {
  return entries.word(`${stage}.profile`) as BeltProfileId | undefined
}

export const beltEntries: StageKindEntries<typeof beltRows> = {
  label: 'Toothed belt',
  short: 'Belt',
  offered: 1,
  rows: beltRows,
  start: (teeth) => {
    const profile = beltProfileIds.find((id) => beltProfileOf(id).allowableTension !== null) ?? 'XL'
    const pitchMm = fromEngine(beltProfileOf(profile).pitch, 'length', 'mm')
    const centreMm = Math.ceil(((teeth.driverTeeth + teeth.drivenTeeth) * pitchMm) / 4)
    return { ...teeth, profile, widthMm: 15, centreMm }
  },
  teethOf: (stage) => stage,
  pitchRadius: (entries, stage, teeth) => {
    const profile = profileOf(entries, stage)
    return profile === undefined ? undefined : pulleyRadius(beltProfileOf(profile).pitch, teeth)
  },
  unrated: (entries, stage) => {
    const profile = profileOf(entries, stage)
    return profile !== undefined && beltProfileOf(profile).allowableTension === null ? profile : undefined
  },
}
