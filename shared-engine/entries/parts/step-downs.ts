import type { ListNode } from '../rows/group.ts'

/** Supplies that make a lower voltage from the pack's. */
export const stepDowns = {
  label: 'Step-down supplies',
  most: 6,
  item: {
    label: 'Step-down supply',
    entries: {
      name: { label: 'Name of the supply', kind: 'text', longest: 120, help: 'What you call it.' },
      volts: { label: 'Output', kind: 'volts', low: 1, high: 400, help: 'Volts that it makes.' },
      amps: {
        label: 'Rating',
        kind: 'amps',
        low: 0.1,
        high: 500,
        lever: { step: 1, way: 'more' },
        help: 'Amps that it gives for long.',
      },
      peakAmps: {
        label: 'Peak rating',
        kind: 'amps',
        low: 0.1,
        high: 500,
        defaultFrom: {
          says: 'its rating',
          of: (entries, group) => entries.number(`${group}.amps`),
        },
        lever: { step: 1, way: 'more', times: 4 },
        help: 'Amps for a moment, as when servos stall.',
      },
      efficiencyPercent: {
        label: 'Efficiency of the supply',
        kind: 'fraction',
        low: 10,
        high: 100,
        default: 90,
        help: 'Power out over power in.',
      },
      outputMilliohm: {
        label: 'Resistance of its output',
        kind: 'ohms',
        low: 0,
        high: 1000,
        default: 0,
        lever: { step: 1, way: 'less' },
        help: 'How far its output sags: volts lost over amps drawn, wires included.',
      },
      lowestVolts: {
        label: 'Lowest voltage behind it',
        kind: 'volts',
        low: 0.5,
        high: 400,
        optional: true,
        lever: { step: 0.1, way: 'less', times: 2 },
        help: 'Where receiver, servos or computer give up.',
        brings: 'Whether a peak browns out what hangs behind it.',
      },
      minimumInputVolts: {
        label: 'Lowest input',
        kind: 'volts',
        low: 1,
        high: 1000,
        optional: true,
        help: 'What it needs from the pack to work.',
        brings: 'Whether the pack’s sag starves it.',
      },
    },
  },
} as const satisfies ListNode
