import type { ListNode } from '../rows/group.ts'

export const accessories = {
  label: 'Accessories',
  most: 20,
  item: {
    label: 'Accessory',
    entries: {
      name: {
        label: 'Name',
        kind: 'text',
        longest: 120,
        help: 'What it is: lamps, a pump, a winch.',
      },
      watts: {
        label: 'Power',
        kind: 'watts',
        low: 0,
        high: 20_000,
        lever: { step: 1, way: 'less' },
        help: 'What it draws while the machine runs.',
      },
      volts: {
        label: 'Voltage',
        kind: 'volts',
        low: 1,
        high: 400,
        optional: true,
        help: 'What its converter makes of the pack’s voltage.',
        brings: 'The limit on its converter, together with the converter’s rating.',
      },
      converterEfficiencyPercent: {
        label: 'Efficiency of its converter',
        kind: 'fraction',
        low: 10,
        high: 100,
        default: 100,
        help: 'Power out of it over power into it; 100 where it runs straight from the pack.',
      },
      converterAmps: {
        label: 'Converter’s rating',
        kind: 'amps',
        low: 0.1,
        high: 500,
        optional: true,
        lever: { step: 0.1, way: 'more' },
        help: 'The most that the converter gives at its output.',
        brings: 'The limit on its converter, together with the voltage.',
      },
    },
  },
} as const satisfies ListNode
