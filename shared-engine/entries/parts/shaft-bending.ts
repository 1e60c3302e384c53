import type { Rows } from '../rows/group.ts'

const distance = { kind: 'length', low: 1, high: 10_000, optional: true } as const
const brings = 'Bending of the shaft: what it bears for good, and what its bearings carry.'

/** How a wheel sits between or beside its bearings: what bends the shaft. The span wins where both are given. */
export const bendingRows = {
  span: {
    ...distance,
    label: 'Bearing to bearing',
    lever: { step: 1, way: 'less', times: 3 },
    help: 'Between the middles of two bearings with the wheel midway. Wins over the overhang.',
    brings,
  },
  overhang: {
    ...distance,
    label: 'Overhang',
    lever: { step: 1, way: 'less', times: 3 },
    help: 'From the last bearing to the middle of a wheel that sits beyond it.',
    brings,
  },
} as const satisfies Rows
