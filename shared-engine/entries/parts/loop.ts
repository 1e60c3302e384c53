import type { Rows } from '../rows/group.ts'
import { fromMaterials } from './material.ts'

const here = { section: 'Tension and stretch' } as const

/** How a loop is held, what it stretches over, and what cold does to it. */
export const loopRows = {
  tensioner: {
    ...here,
    label: 'Tensioner',
    kind: 'text',
    choices: [
      { value: 'fixed', label: 'Fixed: a screw' },
      { value: 'sprung', label: 'Sprung: a spring or a weight' },
    ],
    default: 'fixed',
    lever: { choices: ['fixed', 'sprung'] },
    help: 'A screw keeps the length, so pull and mass slacken one side; a spring keeps the pull.',
  },
  tightSpanMm: {
    ...here,
    label: 'From the sprocket to the load',
    kind: 'length',
    low: 1,
    high: 1e6,
    optional: true,
    lever: { step: 10 },
    help: 'Along the pulled side, to where the ground or a jam holds the loop. Half of the free loop where it is empty.',
    brings: 'A measured free length in place of half of the loop: how hard a jam hits.',
  },
  enclosedAreaCm2: {
    ...here,
    label: 'Area inside the loop',
    kind: 'loopArea',
    low: 0.1,
    high: 1e7,
    optional: true,
    help: 'Of one loop, seen from the side. That of a flat loop where it is left empty.',
    brings: 'How strongly a loop that spins up lifts the front.',
  },
  loopMaterial: {
    ...fromMaterials,
    ...here,
    label: 'What carries the pull',
    optional: true,
    help: 'Cords, plates or the rubber itself; of a loop with cords, choose the cords.',
    brings: 'What cold and warmth do to tension and pitch.',
  },
  frameMaterial: {
    ...fromMaterials,
    ...here,
    label: 'Frame and sprocket',
    default: 'aluminium-6061',
    help: 'What holds the wheels apart.',
  },
  assemblyTemperatureC: {
    ...here,
    label: 'Tensioned at',
    kind: 'temperature',
    low: -40,
    high: 60,
    default: 20,
    help: 'Where static tension and pitch error were taken.',
  },
  workingTensionN: {
    ...here,
    label: 'Working tension of one loop',
    kind: 'force',
    low: 1,
    high: 1e7,
    optional: true,
    lever: { step: 10, way: 'more', times: 3 },
    help: 'What it bears for good. A fifth of its breaking tension where it is left empty.',
    brings: 'A supplier’s working tension in place of a fifth of the breaking one.',
  },
} as const satisfies Rows
