import { materialIds } from '../reference/materials.ts'
import { z } from '../reference/zod.ts'
import { maybeNumber, number, numberOr, word } from './entries.ts'

const toothShape = {
  heightMm: number('track.tooth.heightMm'),
  rootMm: number('track.tooth.rootMm'),
  widthMm: number('track.tooth.widthMm'),
  /** Half of the height where absent; the machine puts it in. */
  loadHeightMm: maybeNumber('track.tooth.loadHeightMm'),
  /** The material's where absent; the machine puts it in. */
  modulusMpa: maybeNumber('track.tooth.modulusMpa'),
  flankDegrees: maybeNumber('track.tooth.flankDegrees'),
  flankFriction: numberOr('track.tooth.flankFriction'),
}

const toothSchema = z.discriminatedUnion('material', [
  z.strictObject({ ...toothShape, material: word('track.tooth.material', materialIds) }),
  z.strictObject({
    ...toothShape,
    material: z.literal('custom'),
    shearStrengthMpa: number('track.tooth.shearStrengthMpa'),
    tensileStrengthMpa: number('track.tooth.tensileStrengthMpa'),
    bearingStrengthMpa: number('track.tooth.bearingStrengthMpa'),
  }),
])

/** The loops, their drive sprocket and their teeth. */
export const trackSchema = z.strictObject({
  count: numberOr('track.count'),
  pitchMm: number('track.pitchMm'),
  sprocketTeeth: number('track.sprocketTeeth'),
  loopPitches: number('track.loopPitches'),
  massGPerM: number('track.massGPerM'),
  pretensionN: numberOr('track.pretensionN'),
  breakingTensionN: maybeNumber('track.breakingTensionN'),
  wrapDegrees: numberOr('track.wrapDegrees'),
  teethAcross: numberOr('track.teethAcross'),
  sharePercent: numberOr('track.sharePercent'),
  loopStiffnessN: maybeNumber('track.loopStiffnessN'),
  pitchErrorMm: numberOr('track.pitchErrorMm'),
  knockdownPercent: numberOr('track.knockdownPercent'),
  internalDragN: numberOr('track.internalDragN'),
  internalDragNPerMps: numberOr('track.internalDragNPerMps'),
  tooth: toothSchema.optional(),
})
