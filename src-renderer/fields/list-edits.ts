import { withItem, withItemMoved, withoutItem } from '../../shared-engine/entries/edit.ts'
import type { Session } from '../state/session.svelte.ts'
import { freshStage, withAssumedStage } from './stage-edits.ts'

// Each is one undoable step; tolerances and origins move along with the items they speak of.

export function addStage(session: Session, at: number): void {
  const fresh = freshStage()
  const added = withItem(session.stored, 'stages', fresh, at)
  session.change('add a reduction', withAssumedStage(added, at, Object.keys(fresh)))
}

export function removeStage(session: Session, at: number): void {
  session.change(`remove reduction ${at + 1}`, withoutItem(session.stored, 'stages', at))
}

export function moveStage(session: Session, from: number, to: number): void {
  session.change(`move reduction ${from + 1}`, withItemMoved(session.stored, 'stages', from, to))
}

/** Parts that are a list with one form: what an item is called, what stands for none, and what a new one starts with. */
export const listParts = {
  accessories: {
    one: 'an accessory',
    none: 'None. What draws from the pack beside the motors shortens the run: lamps, pumps, servos, a radio.',
    start: { name: 'Lamp', watts: 10 },
  },
  stepDowns: {
    one: 'a step-down supply',
    none: 'None. A supply makes a lower voltage for servos, receiver or lamps: what it gives, and when it browns out.',
    start: { name: 'Supply', volts: 5, amps: 3 },
  },
  wires: {
    one: 'a wire',
    none: 'None. Each wire loses volts and warms: whether it is thick enough, and guarded by the fuse.',
    start: { name: 'Pack leads', circuit: 'pack', areaMm2: 4, lengthM: 0.5 },
  },
} as const

export type ListPart = keyof typeof listParts

export function isListPart(part: string): part is ListPart {
  return Object.hasOwn(listParts, part)
}

export function addListItem(session: Session, list: ListPart): void {
  const { one, start } = listParts[list]
  session.change(`add ${one}`, withItem(session.stored, list, start))
}

export function removeListItem(session: Session, list: ListPart, at: number): void {
  session.change(`remove ${listParts[list].one}`, withoutItem(session.stored, list, at))
}
