import { coolantIds } from '../../reference/coolants.ts'
import type { GroupNode } from '../rows/group.ts'
import { coolingCircuit } from './cooling-circuit.ts'

export const cooling = {
  label: 'Liquid cooling',
  partName: 'Cooling',
  brings: 'The coolant’s rise, and motor and controller cooled by it rather than by air.',
  whenAbsent: 'none',
  sections: ['', 'Circuit'],
  entries: {
    kind: {
      label: 'Cooling',
      kind: 'text',
      choices: [{ value: 'liquid', label: 'Liquid, one circuit' }],
      help: 'Motor and controller in one liquid circuit. Without the group, air cools both.',
    },
    flowLPerMin: {
      label: 'Flow',
      kind: 'flow',
      low: 0.01,
      high: 1000,
      help: 'Through the circuit as built: fill a bucket. A pump’s label says what it moves with no hose on it.',
    },
    coolant: {
      label: 'Coolant',
      kind: 'text',
      choices: [
        { value: 'water', label: 'Water' },
        { value: 'glycol30', label: 'Water with 30 % glycol' },
        { value: 'glycol40', label: 'Water with 40 % glycol' },
        { value: 'glycol50', label: 'Water with 50 % glycol' },
        { value: 'glycol60', label: 'Water with 60 % glycol' },
      ],
      fromTable: true,
      lever: { choices: coolantIds },
      help: 'Glycol keeps it from freezing and carries a little less heat.',
    },
    radiatorWPerK: {
      label: 'Radiator',
      kind: 'thermalConductance',
      low: 0.1,
      high: 10_000,
      lever: { step: 0.5, way: 'more' },
      help: 'Watts that it sheds for each degree that the coolant is warmer than the air.',
    },
    ...coolingCircuit,
  },
} as const satisfies GroupNode
