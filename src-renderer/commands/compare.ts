import type { Command } from './command.ts'

/** Builds kept beside the open one. */
export const compareCommands: readonly Command[] = [
  {
    id: 'side.keep',
    label: 'Keep a snapshot',
    heading: 'Edit',
    keys: ['Alt+K'],
    when: ({ session, side }) => session.isOpen && !side.isFull,
    do: ({ side }) => side.keepSnapshot(),
    capture: 'nothing',
  },
]
