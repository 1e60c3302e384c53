import type { Mistake } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import type { EntryReader } from './entry-reader.ts'
import { isJsonGroup } from './json-group.ts'
import type { Rule } from './rule.ts'

/** The paths that a group keyed by paths speaks of. */
function pathsIn(entries: EntryReader, group: string): string[] {
  const value = entries.raw(group)
  return isJsonGroup(value) ? Object.keys(value) : []
}

/** Entries speak for themselves alone: not of a group, not of another tolerance or origin. */
function speaksOfEntry(entries: EntryReader, path: string): boolean {
  const value = /^(tolerances|origins)(\.|$)/.test(path) ? undefined : entries.raw(path)
  return value !== undefined && (typeof value !== 'object' || value === null)
}

const notInFile = (group: string, path: string): Mistake => ({
  code: 'path-not-in-file',
  path: `${group}.${path}`,
  value: shown(path),
  allowed: 'the path of an entry that the file has, such as track.pitchMm or stages.0.driverTeeth',
  kept: '',
})

const originsSpeakOfEntries: Rule = (entries) =>
  pathsIn(entries, 'origins')
    .filter((path) => !speaksOfEntry(entries, path))
    .map((path) => notInFile('origins', path))

const tolerancesSpeakOfNumbers: Rule = (entries) =>
  pathsIn(entries, 'tolerances').flatMap((path): Mistake[] => {
    if (!speaksOfEntry(entries, path)) return [notInFile('tolerances', path)]
    const value = entries.raw(path)
    if (typeof value === 'number') return []
    const allowed = 'a tolerance for an entry that is a number'
    return [{ code: 'not-a-number', path: `tolerances.${path}`, value: shown(value), allowed, kept: '' }]
  })

const oneWidthEach: Rule = (entries) =>
  pathsIn(entries, 'tolerances').flatMap((path): Mistake[] => {
    const at = `tolerances.${path}`
    const [percent, plain] = [entries.raw(`${at}.plusMinusPercent`), entries.raw(`${at}.plusMinus`)]
    if (typeof entries.raw(at) !== 'object' || (percent === undefined) !== (plain === undefined)) return []
    const value = percent === undefined ? 'without a width' : 'given two widths'
    return [
      { code: 'between-fields', path: at, value, allowed: 'either plusMinusPercent or plusMinus', kept: '' },
    ]
  })

/** Rules for tolerances and origins: what they speak of is in the file. */
export const evidenceRules: readonly Rule[] = [tolerancesSpeakOfNumbers, oneWidthEach, originsSpeakOfEntries]
