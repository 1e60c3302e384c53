import { workingInvolute } from '../geometry/gear-mesh.ts'
import { fromEngine } from '../units/convert.ts'
import { type EntryReader, shownEntry } from './entry-reader.ts'
import { allowedOf, fieldOf } from './fields.ts'
import type { AnyStageKind } from './parts/stages/kind.ts'
import { stageKindIds, stageKinds } from './parts/stages/kinds.ts'
import { broken, type Rule } from './rule.ts'

/** Paths of the reductions that a build lists. */
const stagePaths = (entries: EntryReader) =>
  Array.from({ length: entries.length('stages') }, (_, at) => `stages.${at}`)

/** Undefined where there is no such kind. */
function kindOf(entries: EntryReader, stage: string): AnyStageKind | undefined {
  const kind = stageKindIds.find((one) => one === entries.raw(`${stage}.kind`))
  return kind === undefined ? undefined : stageKinds[kind]
}

const wheelsFit: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    const radiusOf = kindOf(entries, stage)?.pitchRadius ?? null
    const [driver, driven] = [entries.number(`${stage}.driverTeeth`), entries.number(`${stage}.drivenTeeth`)]
    const centre = entries.si(`${stage}.centreMm`)
    if (radiusOf === null || driver === undefined || driven === undefined || centre === undefined) return []
    const [one, other] = [radiusOf(entries, stage, driver), radiusOf(entries, stage, driven)]
    if (one === undefined || other === undefined || centre > one + other) return []
    const path = `${stage}.centreMm`
    const least = shownEntry(path, fromEngine(one + other, 'length'))
    const why = `the sum of the pitch radii of ${stage}.driverTeeth and ${stage}.drivenTeeth`
    return broken(path, fromEngine(centre, 'length'), `above ${least}, ${why}`)
  })

const beltIsRated: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    const path = `${stage}.allowableTensionN`
    const profile = kindOf(entries, stage)?.unrated?.(entries, stage)
    if (profile === undefined || entries.raw(path) !== undefined) return []
    const field = fieldOf(path)
    const range = field === undefined ? '' : allowedOf(field)
    const allowed = `${range}, from the belt's maker, since ${stage}.profile ${profile} has no open rating`
    return [{ code: 'missing', path, value: '', allowed, kept: '' }]
  })

const shiftsMesh: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    if (entries.raw(`${stage}.kind`) !== 'gear') return []
    const [driverTeeth, drivenTeeth] = [
      entries.number(`${stage}.driverTeeth`),
      entries.number(`${stage}.drivenTeeth`),
    ]
    const path = `${stage}.drivenShift`
    const [driverShift, drivenShift] = [entries.number(`${stage}.driverShift`), entries.number(path)]
    const pressureAngle = entries.si(`${stage}.pressureAngleDegrees`)
    if (driverTeeth === undefined || drivenTeeth === undefined || pressureAngle === undefined) return []
    if (driverShift === undefined || drivenShift === undefined) return []
    if (workingInvolute({ driverTeeth, drivenTeeth, driverShift, drivenShift, pressureAngle }) > 0) return []
    const allowed = `more: with ${stage}.driverShift the two wheels are cut so deep that they cannot mesh without play`
    return broken(path, drivenShift, allowed)
  })

/** Rules between the entries of one reduction. */
export const stageRules: readonly Rule[] = [wheelsFit, shiftsMesh, beltIsRated]
