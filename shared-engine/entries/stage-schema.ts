import { beltProfileIds } from '../reference/belts.ts'
import { chainSizeIds } from '../reference/chains.ts'
import { finishIds } from '../reference/gears.ts'
import { materialIds } from '../reference/materials.ts'
import { z } from '../reference/zod.ts'
import { maybeNumber, number, numberOr, word } from './entries.ts'

const every = {
  efficiencyPercent: numberOr('stages.*.efficiencyPercent'),
  shaftDiameterMm: maybeNumber('stages.*.shaftDiameterMm'),
  shaftMaterial: word('stages.*.shaftMaterial', materialIds).optional(),
  drivenInertiaGcm2: numberOr('stages.*.drivenInertiaGcm2'),
}

const teeth = {
  driverTeeth: number('stages.*.driverTeeth'),
  drivenTeeth: number('stages.*.drivenTeeth'),
}

const gear = z.strictObject({
  kind: z.literal('gear'),
  ...teeth,
  ...every,
  moduleMm: number('stages.*.moduleMm'),
  faceWidthMm: number('stages.*.faceWidthMm'),
  pressureAngleDegrees: numberOr('stages.*.pressureAngleDegrees'),
  driverMaterial: word('stages.*.driverMaterial', materialIds),
  drivenMaterial: word('stages.*.drivenMaterial', materialIds),
  finish: word('stages.*.finish', finishIds).default('milled'),
})

const belt = z.strictObject({
  kind: z.literal('belt'),
  ...teeth,
  ...every,
  profile: word('stages.*.profile', beltProfileIds),
  widthMm: number('stages.*.widthMm'),
  centreMm: number('stages.*.centreMm'),
  allowableTensionN: maybeNumber('stages.*.allowableTensionN'),
})

const chain = z.strictObject({
  kind: z.literal('chain'),
  ...teeth,
  ...every,
  size: word('stages.*.size', chainSizeIds),
  strands: numberOr('stages.*.strands'),
  centreMm: maybeNumber('stages.*.centreMm'),
})

const fixed = z.strictObject({
  kind: z.literal('fixed'),
  ...every,
  ratio: number('stages.*.ratio'),
})

/** One reduction, by its kind. */
export const stageSchema = z.discriminatedUnion('kind', [gear, belt, chain, fixed])
