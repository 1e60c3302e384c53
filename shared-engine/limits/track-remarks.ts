import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'

/** What there is to say about what holds a machine back, in plain sentences. */
export const trackNotes = {
  'drag-unknown':
    'Range, run time and top speed are without the track’s own drag: track.internalDragN is not entered. About 6 % of the weight is common.',
  'compaction-small':
    'Compaction is under 2 % of the weight: it is a lower bound and not what resists here. The track’s own drag is (track.internalDragN).',
} as const

type TrackNote = keyof typeof trackNotes

/**
 * Share of the weight below which compaction is not what holds a machine back.
 *
 * *Source:* light machines on firm ground were measured at 0.03 to 0.08 of their weight; common practice, no source.
 */
const compactionFloor = 0.02

const applies: Readonly<Record<TrackNote, (machine: Machine, e: Evaluation) => boolean>> = {
  'drag-unknown': ({ track }) => track.internalDrag === 0 && track.internalDragPerSpeed === 0,
  'compaction-small': ({ ground }, { level }) =>
    ground.model === 'soil' &&
    level.groundResistance - ground.skiFriction * (level.weight - level.trackWeight) <
      compactionFloor * level.trackWeight,
}

/** The notes that apply. *Source:* as beside each of them. */
export function trackRemarks(machine: Machine, e: Evaluation): string[] {
  return (Object.keys(trackNotes) as TrackNote[])
    .filter((note) => applies[note](machine, e))
    .map((note) => trackNotes[note])
}
