import { fieldOf } from '../../shared-engine/entries/fields.ts'
import { changeName } from '../fields/edits.ts'
import { troubleOf } from '../fields/entry-text.ts'
import type { Workspace } from '../state/workspace.svelte.ts'

/** An entry of the build that the strip moves: one undoable step for a whole drag. */
export function setStripEntry({ session, notices }: Workspace, path: string, value: number): void {
  const label = fieldOf(path)?.label ?? path
  const mistakes = session.setEntry(changeName(path, label), path, value, `strip:${path}`)
  if (mistakes.length > 0) notices.trouble(`${label} cannot be that.`, troubleOf(mistakes), [])
  else if (notices.shown !== null && notices.shown.what.startsWith(label)) notices.dismiss()
}
