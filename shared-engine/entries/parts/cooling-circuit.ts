import type { Rows } from '../rows/group.ts'

const circuit = { section: 'Circuit' } as const

/** Tank, air, pump and cap of the coolant's circuit. */
export const coolingCircuit = {
  tankLitres: {
    ...circuit,
    label: 'Coolant in the circuit',
    kind: 'volume',
    low: 0.01,
    high: 1000,
    default: 0.2,
    help: 'All of it: tank, hoses, jacket and radiator.',
  },
  airWPerK: {
    ...circuit,
    label: 'Air through the radiator',
    kind: 'thermalConductance',
    low: 0.1,
    high: 1e5,
    optional: true,
    lever: { step: 1, way: 'more' },
    help: 'Heat that its air takes up for each degree: about 1.2 W/K for a litre a second.',
    brings: 'What too little air through the radiator costs.',
  },
  testFlowLPerMin: {
    ...circuit,
    label: 'Flow of the heat test',
    kind: 'flow',
    low: 0.01,
    high: 1000,
    optional: true,
    help: 'Flow at which the motor’s path from case to coolant was measured.',
    brings: 'What less flow than in the test costs: the jacket is then taken as turbulent.',
  },
  flowTestC: {
    ...circuit,
    label: 'Coolant while the flow was measured',
    kind: 'temperature',
    low: -50,
    high: 100,
    default: 20,
    help: 'Cold coolant is thick: a flow measured in the warm is less on a cold morning.',
  },
  pumpWatts: {
    ...circuit,
    label: 'Pump',
    kind: 'watts',
    low: 0,
    high: 5000,
    default: 0,
    help: 'What it draws at the pack; 0 where it stands among the accessories.',
  },
  capKpa: {
    ...circuit,
    label: 'Pressure of the cap',
    kind: 'pressure',
    low: 0,
    high: 200,
    default: 0,
    help: 'Above the air’s, where the cap opens. Never open a hot circuit: it spurts and scalds.',
  },
} as const satisfies Rows
