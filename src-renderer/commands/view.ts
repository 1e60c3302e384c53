import { questions } from '../questions/table.ts'
import { always, type Command } from './command.ts'
import { nextRegion } from './regions.ts'

/** What is looked at, and how; nothing of it changes the build. */
export const viewCommands: readonly Command[] = [
  ...questions.map(({ id, label }, index): Command => ({
    id: `view.question.${id}`,
    label,
    heading: 'View',
    keys: [`Alt+${index + 1}`],
    when: always,
    do: ({ view }) => void (view.question = id),
    capture: 'nothing',
  })),
  {
    id: 'view.start',
    label: 'First numbers of a machine',
    heading: 'View',
    keys: ['Alt+0'],
    when: always,
    do: ({ view }) => void (view.starting = true),
    capture: 'nothing',
  },
  {
    id: 'view.units',
    label: 'Metric or imperial units',
    heading: 'View',
    keys: ['Alt+U'],
    when: always,
    do: ({ view }) => view.setUnits(view.units === 'metric' ? 'imperial' : 'metric'),
    capture: 'nothing',
  },
  {
    id: 'view.theme',
    label: 'Light, dark or as the system',
    heading: 'View',
    keys: ['Alt+T'],
    when: always,
    do: ({ view }) => view.nextTheme(),
    capture: 'nothing',
  },
  {
    id: 'view.fields',
    label: 'Show or hide the fields in a narrow window',
    heading: 'View',
    keys: ['Alt+F'],
    when: always,
    do: ({ view }) => void (view.drawerOpen = !view.drawerOpen),
    capture: 'nothing',
  },
  {
    id: 'view.region',
    label: 'Go to the next region of the page',
    heading: 'View',
    keys: ['F6'],
    when: always,
    do: () => nextRegion(1),
    capture: 'nothing',
  },
  {
    id: 'view.regionBack',
    label: 'Go to the region before',
    heading: 'View',
    keys: ['Shift+F6'],
    when: always,
    do: () => nextRegion(-1),
    capture: 'nothing',
  },
]
