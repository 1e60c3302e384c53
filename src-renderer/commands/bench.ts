import { always, type Command } from './command.ts'

/** Guided bench tests: of the entry at hand where one can fill it, else the list of all. */
export const benchCommands: readonly Command[] = [
  {
    id: 'edit.measure',
    label: 'From a measurement…',
    heading: 'Edit',
    keys: ['Alt+M'],
    when: always,
    do: (workspace) => workspace.measure(workspace.view.helpFor),
    capture: 'nothing',
  },
]
