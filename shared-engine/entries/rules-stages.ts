import { type BeltProfileId, beltProfileOf } from '../reference/belts.ts'
import { type ChainSizeId, chainSizeOf } from '../reference/chains.ts'
import { pulleyRadius } from '../stages/belt/geometry.ts'
import { chainWheelRadius } from '../stages/chain/geometry.ts'
import { fromEngine } from '../units/convert.ts'
import { type EntryReader, shownEntry } from './entry-reader.ts'
import { allowedOf, fieldOf } from './fields.ts'
import { broken, type Rule } from './rule.ts'
import { stageKindIds, type StageKindId } from './stage-kinds.ts'

/** Paths of the reductions that a build lists. */
const stagePaths = (entries: EntryReader) =>
  Array.from({ length: entries.length('stages') }, (_, at) => `stages.${at}`)

/** What the rules ask of a reduction by its kind; undefined where an entry that it takes is unsound. */
interface StageFacts {
  /** Pitch radius of a wheel of so many teeth, m; null where the wheels touch and no distance is entered. */
  readonly pitchRadius: ((entries: EntryReader, stage: string, teeth: number) => number | undefined) | null
  /** The size that has no open rating, so that the maker's is asked for. */
  readonly unrated: ((entries: EntryReader, stage: string) => string | undefined) | null
}

const byKind: Readonly<Record<StageKindId, StageFacts>> = {
  gear: { pitchRadius: null, unrated: null },
  belt: {
    pitchRadius: (entries, stage, teeth) => {
      const profile = profileOf(entries, stage)
      return profile === undefined ? undefined : pulleyRadius(beltProfileOf(profile).pitch, teeth)
    },
    unrated: (entries, stage) => {
      const profile = profileOf(entries, stage)
      return profile !== undefined && beltProfileOf(profile).allowableTension === null ? profile : undefined
    },
  },
  chain: {
    pitchRadius: (entries, stage, teeth) => {
      const size = entries.word(`${stage}.size`) as ChainSizeId | undefined
      return size === undefined ? undefined : chainWheelRadius(chainSizeOf(size).pitch, teeth)
    },
    unrated: null,
  },
  fixed: { pitchRadius: null, unrated: null },
}

function profileOf(entries: EntryReader, stage: string): BeltProfileId | undefined {
  return entries.word(`${stage}.profile`) as BeltProfileId | undefined
}

/** Undefined where there is no such kind. */
function factsOf(entries: EntryReader, stage: string): StageFacts | undefined {
  const kind = stageKindIds.find((one) => one === entries.raw(`${stage}.kind`))
  return kind === undefined ? undefined : byKind[kind]
}

const wheelsFit: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    const radiusOf = factsOf(entries, stage)?.pitchRadius ?? null
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
    const profile = factsOf(entries, stage)?.unrated?.(entries, stage)
    if (profile === undefined || entries.raw(path) !== undefined) return []
    const field = fieldOf(path)
    const range = field === undefined ? '' : allowedOf(field)
    const allowed = `${range}, from the belt's maker, since ${stage}.profile ${profile} has no open rating`
    return [{ code: 'missing', path, value: '', allowed, kept: '' }]
  })

/** Rules between the entries of one reduction. */
export const stageRules: readonly Rule[] = [wheelsFit, beltIsRated]
