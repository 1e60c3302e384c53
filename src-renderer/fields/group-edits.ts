import { groups } from '../../shared-engine/entries/fields.ts'
import { entryAt, withEntry } from '../../shared-engine/entries/edit.ts'
import { patternOf } from '../../shared-engine/entries/path.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import type { Session } from '../state/session.svelte.ts'

/** What a group that may be absent whole starts with: guesses, by its pattern. */
const starts: Readonly<Record<string, (stored: StoredBuild) => Readonly<Record<string, string | number>>>> = {
  cooling: () => ({ kind: 'liquid', flowLPerMin: 1, coolant: 'glycol30', radiatorWPerK: 10 }),
  'track.tooth': toothStart,
  'track.shaft': () => ({ diameterMm: 8, material: 'steel-c45' }),
  'track.shaft.joint': () => ({ kind: 'pin', pinMm: 2 }),
  'track.shaft.bearing': () => ({ dynamicN: 3000 }),
  'motor.joint': () => ({ kind: 'screw', screwMm: 3, shaftDiameterMm: 5 }),
  'stages.*.joint': () => ({ kind: 'pin', pinMm: 2 }),
  'stages.*.bearing': () => ({ dynamicN: 3000 }),
}

/** The shaft below a reduction's joint or bearing, where the build does not know it yet. */
const shaftStart = { shaftDiameterMm: 8, shaftMaterial: 'steel-c45' } as const

/** A tooth in proportion to the pitch, of a soft print: the weak end of what is likely. */
function toothStart({ track }: StoredBuild) {
  const share = (part: number) => Math.min(200, Math.max(0.2, Number((track.pitchMm * part).toPrecision(2))))
  return { material: 'tpu-95a-printed', heightMm: share(0.35), rootMm: share(0.4), widthMm: share(1) }
}

/** What a group is called in the middle of a sentence. */
export function groupName(group: string): string {
  return groups[patternOf(group)]?.label.toLowerCase() ?? group
}

/** Enters a group with guesses to start from, marked as such. */
export function addGroup(session: Session, group: string): void {
  const start = starts[patternOf(group)]?.(session.stored)
  if (start === undefined) return
  const below = /^stages\.\d+/.exec(group)?.[0]
  const onShaft = below === undefined ? session.stored : withShaft(session.stored, below)
  const marked = Object.keys(start).reduce(
    (stored, key) => withEntry(stored, `origins.${group}.${key}`, 'assumed'),
    withEntry(onShaft, group, start),
  )
  session.change(`enter the ${groupName(group)}`, marked)
}

function withShaft(stored: StoredBuild, stage: string): StoredBuild {
  return Object.entries(shaftStart).reduce((build, [key, value]) => {
    const path = `${stage}.${key}`
    if (entryAt(build, path) !== undefined) return build
    return withEntry(withEntry(build, path, value), `origins.${path}`, 'assumed')
  }, stored)
}

export function removeGroup(session: Session, group: string): void {
  session.change(`remove the ${groupName(group)}`, withEntry(session.stored, group, undefined))
}
