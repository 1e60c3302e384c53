import type { Rows } from '../../rows/group.ts'
import { everyStage, kindRow } from './every.ts'

export const fixedRows = {
  ...kindRow,
  ...everyStage,
  ratio: {
    label: 'Ratio',
    kind: 'none',
    low: 0.05,
    high: 200,
    lever: { step: 0.01 },
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
