import { fieldOf } from '../../shared-engine/entries/fields.ts'
import { changeName } from '../fields/edits.ts'
import { troubleOf } from '../fields/entry-text.ts'
import type { Workspace } from '../state/workspace.svelte.ts'

/** An entry of the build that the strip moves: one undoable step for a whole drag. */
export function setStripEntry(
  { session, notices }: Workspace,
  path: string,
  value: number,
  group: string | null = `strip:${path}`,
): void {
  const label = fieldOf(path)?.label ?? path
  const mistakes = session.setEntry(changeName(path, label), path, value, group)
  if (mistakes.length > 0) notices.trouble(`${label} cannot be that.`, troubleOf(mistakes), [])
  else if (notices.shown !== null && notices.shown.what.startsWith(label)) notices.dismiss()
}

/**
 * Makes a throttle the build's cap, as one undoable step; nothing is only looked at any more.
 *
 * @param percent of full throttle; written to a tenth, never above what was asked for
 */
export function setThrottleCap(workspace: Workspace, percent: number): void {
  const tenths = Math.floor(percent * 10 + 1e-6) / 10
  setStripEntry(workspace, 'controller.throttleCapPercent', tenths, null)
  workspace.operating.throttleAsked = null
  workspace.notices.done(`The throttle cap is ${tenths}\u202F%. Undo puts it back.`)
}
