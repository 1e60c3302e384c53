import { always, type Command } from './command.ts'

/** Builds come and go. */
export const fileCommands: readonly Command[] = [
  {
    id: 'file.new',
    label: 'New build',
    heading: 'File',
    keys: ['Mod+N', 'Alt+N'],
    when: always,
    do: async ({ files, view }) => {
      if (await files.newBuild()) view.starting = true
    },
    capture: 'nothing',
  },
  {
    id: 'file.open',
    label: 'Open…',
    heading: 'File',
    keys: ['Mod+O'],
    when: always,
    do: ({ files }) => files.open(),
    capture: 'nothing',
  },
  {
    id: 'file.recent',
    label: 'Recent files…',
    heading: 'File',
    keys: ['Mod+Shift+O'],
    when: always,
    do: (workspace) => void (workspace.sheet = 'recent'),
    capture: 'nothing',
  },
  {
    id: 'file.demos',
    label: 'Demo builds…',
    heading: 'File',
    keys: [],
    when: always,
    do: (workspace) => void (workspace.sheet = 'demos'),
    capture: 'nothing',
  },
  {
    id: 'file.save',
    label: 'Save',
    heading: 'File',
    keys: ['Mod+S'],
    when: always,
    do: async ({ files }) => void (await files.save()),
    capture: 'nothing',
  },
  {
    id: 'file.saveAs',
    label: 'Save as…',
    heading: 'File',
    keys: ['Mod+Shift+S'],
    when: always,
    do: async ({ files }) => void (await files.saveAs()),
    capture: 'nothing',
  },
  {
    id: 'file.revert',
    label: 'Revert to saved',
    heading: 'File',
    keys: [],
    when: ({ files, session }) => files.onDisk !== null && (session.isDirty || files.changedOutside !== null),
    do: ({ files }) => files.revert(),
    capture: 'nothing',
  },
  {
    id: 'window.new',
    label: 'New window',
    heading: 'File',
    keys: ['Mod+Shift+N'],
    when: always,
    do: ({ host }) => host.newWindow(),
    capture: 'nothing',
  },
]
