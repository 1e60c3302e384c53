import type { ListNode } from '../rows/group.ts'

/** The place of a step-down supply in its list; also asked of an accessory. */
export const stepDownPlace = { kind: 'count', low: 0, high: 5, whole: true, optional: true } as const

/** Leads between pack, controllers, motors and supplies. */
export const wires = {
  label: 'Wires',
  most: 20,
  item: {
    label: 'Wire',
    entries: {
      name: { label: 'Name of the wire', kind: 'text', longest: 120, help: 'Which wire it is.' },
      circuit: {
        label: 'Circuit',
        kind: 'text',
        choices: [
          { value: 'pack', label: 'Pack to controllers' },
          { value: 'motor', label: 'Leads of one motor' },
          { value: 'stepDown', label: 'Output of a step-down supply' },
        ],
        help: 'What flows through it. The pack’s wires make its wiring resistance where that is left empty.',
      },
      stepDown: {
        ...stepDownPlace,
        label: 'Which step-down supply',
        help: 'Its place in the list of supplies, counted from 0.',
        brings: 'The current of a wire behind a supply.',
      },
      areaMm2: {
        label: 'Section of the copper',
        kind: 'wireSection',
        low: 0.05,
        high: 500,
        optional: true,
        lever: { step: 0.5, way: 'more' },
        help: 'Of one conductor, as printed. Either this or the gauge.',
        brings: 'Its resistance and warming; or enter the gauge.',
      },
      awg: {
        label: 'Gauge (AWG)',
        kind: 'none',
        low: -3,
        high: 40,
        optional: true,
        help: 'American wire gauge: thicker wires have smaller numbers, 0000 is −3.',
        brings: 'Its resistance and warming; or enter the section.',
      },
      lengthM: {
        label: 'Length, both ways',
        kind: 'distance',
        low: 0.01,
        high: 200,
        lever: { step: 0.05, way: 'less' },
        help: 'There and back.',
      },
      parallel: {
        label: 'Wires side by side',
        kind: 'count',
        counted: 'wires',
        low: 1,
        high: 12,
        whole: true,
        default: 1,
        lever: { step: 1, way: 'more' },
        help: 'Equal wires that share the current.',
      },
      outsideMm: {
        label: 'Outer diameter',
        kind: 'length',
        low: 0.3,
        high: 100,
        optional: true,
        help: 'Over the insulation. Copper plus 0.8 mm all round where it is left empty.',
        brings: 'A measured surface that cools, in place of an assumed one.',
      },
      maxTemperatureC: {
        label: 'Hottest allowed insulation',
        kind: 'temperature',
        low: 50,
        high: 250,
        default: 105,
        help: 'Printed on it: 105 °C for common leads, 180 to 200 °C for silicone.',
      },
      connectorAmps: {
        label: 'Rating of its connectors',
        kind: 'amps',
        low: 0.5,
        high: 2000,
        optional: true,
        lever: { step: 5, way: 'more' },
        help: 'Of the weakest connector in this wire.',
        brings: 'The limit on its connectors.',
      },
      connectorMilliohm: {
        label: 'Resistance of its connectors',
        kind: 'ohms',
        low: 0,
        high: 100,
        default: 0,
        help: 'All of them in series.',
      },
    },
  },
} as const satisfies ListNode
