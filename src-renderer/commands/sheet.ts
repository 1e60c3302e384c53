import type { Command } from './command.ts'

/** What leaves the program on paper. */
export const sheetCommands: readonly Command[] = [
  {
    id: 'file.sheet',
    label: 'Sheet to print',
    heading: 'File',
    keys: ['Alt+P'],
    when: ({ session }) => session.isOpen,
    do: (workspace) => workspace.showPrinted(false),
    capture: 'nothing',
  },
  {
    id: 'file.print',
    label: 'Print the sheet…',
    heading: 'File',
    keys: ['Mod+P'],
    when: ({ session }) => session.isOpen,
    do: (workspace) => workspace.showPrinted(true),
    capture: 'nothing',
  },
]
