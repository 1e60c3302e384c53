import { withEntry } from '../../shared-engine/entries/edit.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import type { Session } from '../state/session.svelte.ts'

/** Groups of entries that may be absent whole. */
export type WholeGroup = 'cooling' | 'track.tooth'

/** Enters a group with numbers to start from, marked as assumed. */
export function addGroup(session: Session, group: WholeGroup): void {
  const start = group === 'cooling' ? coolingStart : toothStart(session.stored)
  const entered = withEntry(session.stored, group, start)
  const marked = Object.keys(start).reduce(
    (stored, key) => withEntry(stored, `origins.${group}.${key}`, 'assumed'),
    entered,
  )
  session.change(group === 'cooling' ? 'add liquid cooling' : 'enter the drive tooth', marked)
}

export function removeGroup(session: Session, group: WholeGroup): void {
  const name = group === 'cooling' ? 'remove liquid cooling' : 'remove the drive tooth'
  session.change(name, withEntry(session.stored, group, undefined))
}

const coolingStart = { kind: 'liquid', flowLPerMin: 1, coolant: 'glycol30', radiatorWPerK: 10 } as const

/** A tooth in proportion to the pitch, of a soft print: the weak end of what is likely. */
function toothStart({ track }: StoredBuild) {
  const share = (part: number) => Math.min(200, Math.max(0.2, Number((track.pitchMm * part).toPrecision(2))))
  return {
    material: 'tpu-95a-printed',
    heightMm: share(0.35),
    rootMm: share(0.4),
    widthMm: share(1),
  } as const
}
