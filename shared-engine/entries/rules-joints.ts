import type { Mistake } from '../mistakes/mistake.ts'
import type { EntryReader } from './entry-reader.ts'
import { allowedOf, fieldOf } from './fields.ts'
import { broken, type Rule } from './rule.ts'
import { shownEntry } from './entry-reader.ts'

/** Thinnest and thickest shaft that parallel keys are made for, mm. *Source:* DIN 6885-1, from memory. */
const keyed = { thinnest: 6, thickest: 95 } as const

const stagePaths = (entries: EntryReader) =>
  Array.from({ length: entries.length('stages') }, (_, at) => `stages.${at}`)

/** Where a build may have a joint, and the diameter of the shaft below it. */
function jointsOf(entries: EntryReader): readonly { readonly path: string; readonly diameter: string }[] {
  return [
    { path: 'motor.joint', diameter: 'motor.joint.shaftDiameterMm' },
    ...stagePaths(entries).map((stage) => ({ path: `${stage}.joint`, diameter: `${stage}.shaftDiameterMm` })),
    { path: 'track.shaft.joint', diameter: 'track.shaft.diameterMm' },
  ].filter(({ path }) => entries.raw(path) !== undefined)
}

const flatLeavesHalf: Rule = (entries) =>
  jointsOf(entries).flatMap(({ path, diameter }) => {
    const [depth, across] = [entries.number(`${path}.flatDepthMm`), entries.number(diameter)]
    if (entries.raw(`${path}.kind`) !== 'flat' || depth === undefined || across === undefined) return []
    if (depth < across / 2) return []
    const most = shownEntry(diameter, across / 2)
    return broken(`${path}.flatDepthMm`, depth, `below ${most}, half of ${diameter}`)
  })

const keyFitsShaft: Rule = (entries) =>
  jointsOf(entries).flatMap(({ path, diameter }) => {
    const across = entries.number(diameter)
    if (entries.raw(`${path}.kind`) !== 'key' || across === undefined) return []
    const { thinnest, thickest } = keyed
    if (across >= thinnest && across <= thickest) return []
    const instead = across < thinnest ? ': use a flat, pin or screws' : ''
    const allowed = `${thinnest} to ${shownEntry(diameter, thickest)} where ${path}.kind is key${instead}`
    return broken(diameter, across, allowed)
  })

/** A joint or a bearing stands on a shaft of which diameter and material are known. */
const joinedShaftIsKnown: Rule = (entries) =>
  stagePaths(entries).flatMap((stage) => {
    const asking = ['joint', 'bearing'].find((key) => entries.raw(`${stage}.${key}`) !== undefined)
    if (asking === undefined) return []
    return ['shaftDiameterMm', 'shaftMaterial']
      .map((key) => `${stage}.${key}`)
      .filter((path) => entries.raw(path) === undefined)
      .map((path): Mistake => {
        const field = fieldOf(path)
        const allowed = `${field === undefined ? '' : allowedOf(field)}, since ${stage}.${asking} stands on it`
        return { code: 'missing', path, value: '', allowed, kept: '' }
      })
  })

/** Rules between joints, bearings and their shafts. */
export const jointRules: readonly Rule[] = [joinedShaftIsKnown, keyFitsShaft, flatLeavesHalf]
