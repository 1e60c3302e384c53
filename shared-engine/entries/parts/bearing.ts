import type { GroupNode } from '../rows/group.ts'

const diameter = { kind: 'length', low: 0.5, high: 1000, optional: true } as const

/** The bearing that carries the most of a shaft. */
export const bearing = {
  label: 'Bearing of the shaft',
  whenAbsent: 'none',
  brings: 'How long the bearing lasts, and whether it turns too fast for grease.',
  entries: {
    dynamicN: {
      label: 'Dynamic load rating',
      kind: 'force',
      low: 1,
      high: 1e7,
      lever: { step: 10, way: 'more' },
      help: 'C in the maker’s table: the load under which nine of ten last a million turns.',
    },
    kind: {
      label: 'Rolling elements',
      kind: 'text',
      choices: [
        { value: 'ball', label: 'Balls' },
        { value: 'roller', label: 'Rollers or needles' },
      ],
      default: 'ball',
      help: 'Life goes with the third power of rating over load for balls, with 10/3 for rollers.',
    },
    boreMm: {
      ...diameter,
      label: 'Bore of the bearing',
      help: 'Its inner diameter.',
      brings: 'Whether it turns too fast for grease, together with the outer diameter.',
    },
    outerMm: {
      ...diameter,
      label: 'Outer diameter of the bearing',
      help: 'Of its outer ring.',
      brings: 'Whether it turns too fast for grease, together with the bore.',
    },
  },
} as const satisfies GroupNode
