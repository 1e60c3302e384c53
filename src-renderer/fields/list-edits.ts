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

export function addAccessory(session: Session): void {
  session.change('add an accessory', withItem(session.stored, 'accessories', { name: 'Lamp', watts: 10 }))
}

export function removeAccessory(session: Session, at: number): void {
  session.change('remove an accessory', withoutItem(session.stored, 'accessories', at))
}
