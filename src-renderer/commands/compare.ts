import { Side } from '../questions/side/side.svelte.ts'
import type { Command } from './command.ts'

/** Builds kept beside the open one. */
export const compareCommands: readonly Command[] = [
  {
    id: 'side.keep',
    label: 'Keep a snapshot',
    heading: 'Edit',
    keys: ['Alt+K'],
    when: (workspace) => workspace.session.isOpen && !workspace.of(Side).isFull,
    do: (workspace) => workspace.of(Side).keepSnapshot(),
    capture: 'nothing',
  },
]
