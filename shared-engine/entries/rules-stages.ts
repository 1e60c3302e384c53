import { type BeltProfileId, beltProfileOf } from '../reference/belts.ts'
import { type ChainSizeId, chainSizeOf } from '../reference/chains.ts'
import { fromEngine } from '../units/convert.ts'
import { type EntryReader, shownEntry } from './entry-reader.ts'
import { allowedOf, fieldOf } from './fields.ts'
import { broken, type Rule } from './rule.ts'

/** Paths of the reductions that a build lists. */
const stagePaths = (entries: EntryReader) =>
  Array.from({ length: entries.length('stages') }, (_, at) => `stages.${at}`)

/** Pitch radius of a wheel of so many teeth, m; undefined where the size is unsound. */
function pitchRadius(entries: EntryReader, stage: string, teeth: number): number | undefined {
  if (entries.raw(`${stage}.kind`) === 'belt') {
    const profile = entries.word(`${stage}.profile`)
    return profile === undefined
      ? undefined
      : (beltProfileOf(profile as BeltProfileId).pitch * teeth) / (2 * Math.PI)
  }
  const size = entries.word(`${stage}.size`)
  return size === undefined
    ? undefined
    : chainSizeOf(size as ChainSizeId).pitch / (2 * Math.sin(Math.PI / teeth))
}

const wheelsFit: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    const [driver, driven] = [entries.number(`${stage}.driverTeeth`), entries.number(`${stage}.drivenTeeth`)]
    const centre = entries.si(`${stage}.centreMm`)
    if (driver === undefined || driven === undefined || centre === undefined) return []
    const [one, other] = [pitchRadius(entries, stage, driver), pitchRadius(entries, stage, driven)]
    if (one === undefined || other === undefined || centre > one + other) return []
    const path = `${stage}.centreMm`
    const least = shownEntry(path, fromEngine(one + other, 'length'))
    const why = `the sum of the pitch radii of ${stage}.driverTeeth and ${stage}.drivenTeeth`
    return broken(path, fromEngine(centre, 'length'), `above ${least}, ${why}`)
  })

const beltIsRated: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    const path = `${stage}.allowableTensionN`
    const profile = entries.raw(`${stage}.kind`) === 'belt' ? entries.word(`${stage}.profile`) : undefined
    if (profile === undefined || entries.raw(path) !== undefined) return []
    if (beltProfileOf(profile as BeltProfileId).allowableTension !== null) return []
    const field = fieldOf(path)
    const range = field === undefined ? '' : allowedOf(field)
    const allowed = `${range}, from the belt's maker, since ${stage}.profile ${profile} has no open rating`
    return [{ code: 'missing', path, value: '', allowed, kept: '' }]
  })

/** Rules between the entries of one reduction. */
export const stageRules: readonly Rule[] = [wheelsFit, beltIsRated]
