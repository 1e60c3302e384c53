import type { GroupNode, ListNode } from '../rows/group.ts'

const held = { low: 0, high: 100_000, section: null } as const
const asked = { optional: true, section: null } as const
const one = 'One of the four ways to ask for a speed in this row.'

const rows = {
  label: 'Rows of the pattern',
  most: 200,
  required: true,
  item: {
    label: 'Row',
    entries: {
      seconds: {
        label: 'Seconds',
        section: null,
        kind: 'time',
        low: 0.01,
        high: 86_400,
        help: 'How long the row lasts.',
      },
      throttlePercent: {
        ...asked,
        label: 'Throttle',
        kind: 'fraction',
        low: 0,
        high: 100,
        help: 'Held throttle, at most the cap.',
        brings: one,
      },
      speedKmh: {
        ...asked,
        label: 'Speed',
        kind: 'roadSpeed',
        low: 0,
        high: 200,
        help: 'Held speed, where the machine reaches it; 0 stands.',
        brings: one,
      },
      speedPercent: {
        ...asked,
        label: 'Share of top speed',
        kind: 'fraction',
        low: 0,
        high: 150,
        help: 'Held speed as a share of the top speed of the build.',
        brings: one,
      },
      brakePercent: {
        ...asked,
        label: 'Brake',
        kind: 'fraction',
        low: 0,
        high: 100,
        help: 'Share of all brakes until it stands; then it stands.',
        brings: one,
      },
      gradePercent: {
        ...asked,
        label: 'Grade of the row',
        kind: 'fraction',
        low: -200,
        high: 200,
        help: 'Negative downhill. That of the build where it is left empty.',
        brings: 'A grade of its own.',
      },
      loadKg: {
        ...asked,
        label: 'Load in the row',
        kind: 'mass',
        low: 0,
        high: 20_000,
        help: 'In place of the load of the build.',
        brings: 'A load of its own.',
      },
      towForceN: {
        ...asked,
        ...held,
        label: 'Pull in the row',
        kind: 'force',
        help: 'In place of the pull of the build.',
        brings: 'A pull of its own.',
      },
      resistancePercent: {
        label: 'Rolling resistance',
        section: null,
        kind: 'fraction',
        low: 1,
        high: 300,
        default: 100,
        help: 'As a share of the ground’s: above 100 % in ruts or deeper snow.',
      },
      gripPercent: {
        label: 'Grip in the row',
        section: null,
        kind: 'fraction',
        low: 1,
        high: 300,
        default: 100,
        help: 'As a share of the ground’s grip and turning friction.',
      },
      turnPercent: {
        label: 'Turning',
        section: null,
        kind: 'fraction',
        low: 0,
        high: 100,
        default: 0,
        help: 'Share of the time in which it turns on the spot, spread evenly.',
      },
    },
  },
} as const satisfies ListNode

/** What the machine is driven through: heat, charge and wear are judged by it. */
export const pattern = {
  label: 'Drive pattern',
  whenAbsent: 'none',
  brings: 'Heat, charge and continuous currents of your own drive in place of a mixed one.',
  entries: {
    name: {
      label: 'Name of the pattern',
      section: null,
      kind: 'text',
      longest: 120,
      optional: true,
      help: 'What the drive is: a morning’s haul, a race.',
      brings: 'A name for it.',
    },
    rows,
  },
} as const satisfies GroupNode
