import type { ListNode } from '../rows/group.ts'
import { stepDownPlace } from './wires.ts'

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
      stepDown: {
        ...stepDownPlace,
        label: 'Behind which step-down supply',
        help: 'Its place in the list of supplies, counted from 0; that supply’s efficiency then counts. Empty: on the pack.',
        brings: 'Its share in the load of a supply.',
      },
      peakWatts: {
        label: 'Peak power',
        kind: 'watts',
        low: 0,
        high: 20_000,
        defaultFrom: {
          says: 'its power',
          of: (entries, group) => entries.number(`${group}.watts`),
        },
        help: 'What it draws for a moment: a servo that stalls, a lamp that is switched on.',
      },
      maxVolts: {
        label: 'Highest voltage of the accessory',
        kind: 'volts',
        low: 1,
        high: 400,
        optional: true,
        lever: { step: 1, way: 'more', times: 2 },
        help: 'What it stands where it hangs on the bare pack.',
        brings: 'The limit on its voltage at a full pack.',
      },
    },
  },
} as const satisfies ListNode
