import { changedEntries } from '../../shared-engine/entries/changes.ts'
import { partOfPath } from '../fields/part-of-path.ts'
import type { Workspace } from '../state/workspace.svelte.ts'
import type { Command } from './command.ts'

/** Takes a step, and shows the part whose entry it changed: what nobody sees change is not undone. */
function showing({ session, view }: Workspace, step: () => void): void {
  const before = session.stored
  step()
  const changed = changedEntries(before, session.stored).map(({ path }) =>
    path.replace(/^(tolerances|origins)\./, ''),
  )
  const [path] = changed
  if (path !== undefined && path !== 'name' && path !== 'notes' && !view.starting)
    void view.showEntry(partOfPath(path), path)
}

/** What was done, taken back and done again. */
export const editCommands: readonly Command[] = [
  {
    id: 'edit.undo',
    label: 'Undo',
    detail: ({ session }) => (session.isOpen ? session.history.undoName : null),
    heading: 'Edit',
    keys: ['Mod+Z'],
    when: ({ session }) => session.isOpen && session.history.undoName !== null,
    do: (workspace) => {
      const { session, notices } = workspace
      const { undoName } = session.history
      showing(workspace, () => session.history.undo())
      notices.spoken = `Undone: ${undoName ?? ''}`
    },
    capture: 'nothing',
  },
  {
    id: 'edit.redo',
    label: 'Redo',
    detail: ({ session }) => (session.isOpen ? session.history.redoName : null),
    heading: 'Edit',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    when: ({ session }) => session.isOpen && session.history.redoName !== null,
    do: (workspace) => {
      const { session, notices } = workspace
      const { redoName } = session.history
      showing(workspace, () => session.history.redo())
      notices.spoken = `Done again: ${redoName ?? ''}`
    },
    capture: 'nothing',
  },
  {
    id: 'edit.find',
    label: 'Find…',
    heading: 'Edit',
    keys: ['Mod+F'],
    when: ({ session }) => session.isOpen,
    do: (workspace) => void (workspace.sheet = 'find'),
    capture: 'nothing',
  },
]
