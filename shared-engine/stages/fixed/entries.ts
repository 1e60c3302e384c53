import type { StageKindEntries } from '../../entries/parts/stages/kind.ts'
import type { Rows } from '../../entries/rows/group.ts'
import { everyStage } from '../../entries/parts/stages/every.ts'

export const fixedRows = {
  ...everyStage,
  ratio: {
    label: 'Ratio',
    kind: 'none',
    low: 0.05,
    high: 200,
    lever: { step: 0.01, times: 3 },
    axis: { offered: 0, turns: 3 },
    help: 'Turns in for one turn out: above 1 slows down.',
    asks: {
      question: 'Which way round is the ratio?',
      conventions: [
        { label: 'Turns in for one turn out', factor: 1 },
        { label: 'Turns out for one turn in', factor: 'inverse' },
      ],
    },
  },
} as const satisfies Rows

/** Teeth of the driver that stands for it where wheels take its place. */
const driverTeeth = 12

export const fixedEntries: StageKindEntries<typeof fixedRows> = {
  label: 'Gearbox of a known ratio',
  short: 'Gearbox',
  offered: 99,
  rows: fixedRows,
  start: (teeth) => ({ ratio: Number((teeth.drivenTeeth / teeth.driverTeeth).toPrecision(6)) }),
  teethOf: ({ ratio }) => ({
    driverTeeth,
    drivenTeeth: Math.min(1000, Math.max(4, Math.round(driverTeeth * ratio))),
  }),
  pitchRadius: null,
  unrated: null,
}
