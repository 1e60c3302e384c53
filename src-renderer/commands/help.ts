import { always, type Command } from './command.ts'

export const helpCommands: readonly Command[] = [
  {
    id: 'help.shortcuts',
    label: 'Shortcuts',
    heading: 'Help',
    keys: ['?', 'F1'],
    when: always,
    do: (workspace) => void (workspace.sheet = 'shortcuts'),
    capture: 'nothing',
  },
  {
    id: 'help.words',
    label: 'Words and what they mean',
    heading: 'Help',
    keys: [],
    when: always,
    do: (workspace) => workspace.explain(''),
    capture: 'nothing',
  },
  {
    id: 'help.about',
    label: 'About Pitchline',
    heading: 'Help',
    keys: [],
    when: always,
    do: (workspace) => void (workspace.sheet = 'about'),
    capture: 'nothing',
  },
]
