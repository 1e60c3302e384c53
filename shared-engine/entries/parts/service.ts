import type { GroupNode } from '../rows/group.ts'
import type { DerivedDefault } from '../rows/row.ts'
import { pattern } from './pattern.ts'

/** Held to the entry's own range. */
const airTemperature = {
  says: 'that of the air',
  of: (entries) => {
    const air = entries.number('ground.airTemperatureC')
    return air === undefined ? undefined : Math.min(70, Math.max(-40, air))
  },
} as const satisfies DerivedDefault

export const service = {
  label: 'Conditions',
  whenAbsent: {},
  sections: ['', 'Load'],
  entries: {
    factor: {
      label: 'Factor for shock',
      section: 'Load',
      rank: 1,
      kind: 'none',
      low: 1,
      high: 5,
      default: 1.5,
      help: 'Multiplies every static load on teeth, shafts, belts and chains. 1 is a laboratory, 2 and more rough ground.',
    },
    windingTemperatureC: {
      label: 'Motor’s running temperature',
      section: 'Load',
      kind: 'temperature',
      low: -40,
      high: 200,
      default: 60,
      help: 'Of winding and magnets, for the figures of a machine that has been running for a while.',
    },
    packTemperatureC: {
      label: 'Pack temperature',
      rank: 1,
      kind: 'temperature',
      low: -40,
      high: 70,
      defaultFrom: airTemperature,
      // kept warm until the start
      lever: { step: 1, way: 'more', most: 25 },
      help: 'A cold pack sags: at 0 °C its cells have about twice the resistance. Never charge a frozen pack.',
    },
    stateOfChargePercent: {
      label: 'Charge',
      kind: 'fraction',
      low: 1,
      high: 100,
      default: 100,
      help: 'How full the pack is for the running figures.',
    },
    reservePercent: {
      label: 'Reserve',
      kind: 'fraction',
      low: 0,
      high: 90,
      default: 20,
      help: 'Charge that stays in the pack, to come home and to keep the cells well.',
    },
    burstSeconds: {
      label: 'Length of a burst',
      section: 'Load',
      kind: 'time',
      low: 0.1,
      high: 60,
      default: 5,
      help: 'How long the hardest pull lasts: bursts of motor, wires and fuse are judged by it.',
    },
    lifeHours: {
      label: 'Life wanted of bearings',
      section: 'Load',
      rank: 1,
      kind: 'life',
      low: 1,
      high: 100_000,
      default: 100,
      help: 'Hours at top speed that nine of ten bearings should last.',
    },
    pattern,
  },
} as const satisfies GroupNode
