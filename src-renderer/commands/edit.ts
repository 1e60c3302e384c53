import type { Command } from './command.ts'

/** What was done, taken back and done again. */
export const editCommands: readonly Command[] = [
  {
    id: 'edit.undo',
    label: 'Undo',
    detail: ({ session }) => (session.isOpen ? session.history.undoName : null),
    heading: 'Edit',
    keys: ['Mod+Z'],
    when: ({ session }) => session.isOpen && session.history.undoName !== null,
    do: ({ session, notices }) => {
      const { undoName } = session.history
      session.history.undo()
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
    do: ({ session, notices }) => {
      const { redoName } = session.history
      session.history.redo()
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
