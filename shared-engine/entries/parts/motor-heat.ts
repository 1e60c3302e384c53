import type { Rows } from '../rows/group.ts'

const node = { section: 'Heat of winding and case', optional: true } as const
const resistance = { ...node, kind: 'thermalResistance', low: 0.001, high: 1000 } as const
const capacity = { ...node, kind: 'heatCapacity', low: 0.1, high: 1e6 } as const

/** Winding and case as two nodes, and the winding's inductance. */
export const motorHeat = {
  windingToCaseKPerW: {
    ...resistance,
    label: 'From winding to case',
    help: 'Degrees between winding and case for each watt. With the next entry, winding and case are followed apart.',
    brings:
      'The winding apart from the case, together with the path from case to sink: bursts are then judged well.',
  },
  caseToSinkKPerW: {
    ...resistance,
    label: 'From case to air or coolant',
    lever: { step: 0.01, way: 'less' },
    help: 'Degrees between case and air or coolant for each watt.',
    brings: 'The winding apart from the case, together with the path from winding to case.',
  },
  windingHeatCapacityJPerK: {
    ...capacity,
    label: 'Heat capacity of the winding',
    help: 'Copper alone: about 390 J/K for each kilogram.',
    brings: 'How fast the winding warms in a burst.',
  },
  caseHeatCapacityJPerK: {
    ...capacity,
    label: 'Heat capacity of the case',
    help: 'All but the copper: about 450 J/K for each kilogram of iron, 900 of aluminium.',
    brings: 'How fast the case follows the winding.',
  },
  inductanceMicrohenry: {
    label: 'Inductance',
    section: 'Rotor',
    kind: 'inductance',
    low: 0.1,
    high: 1e6,
    optional: true,
    help: 'Between two of the three leads, from the sheet or a meter. Small motors with little of it draw more at part throttle.',
    brings: 'The ripple of the motor’s current, together with the switching frequency.',
  },
} as const satisfies Rows
