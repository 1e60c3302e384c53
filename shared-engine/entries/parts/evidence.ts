import type { RecordNode } from '../rows/group.ts'

export const tolerances = {
  label: 'Tolerances',
  each: {
    label: 'Tolerance',
    entries: {
      plusMinusPercent: {
        label: 'Tolerance',
        kind: 'fraction',
        low: 0,
        high: 1000,
        optional: true,
        help: 'How far the true value may lie from the entry, as a share of it.',
      },
      plusMinus: {
        label: 'Tolerance',
        kind: 'none',
        low: 0,
        high: 1e9,
        optional: true,
        help: 'How far the true value may lie from the entry, in the unit of the entry.',
      },
      shape: {
        label: 'Spread',
        kind: 'text',
        choices: [
          { value: 'uniform', label: 'Anywhere within, equally likely' },
          { value: 'normal', label: 'Mostly near the entry' },
        ],
        help: 'How the values within the tolerance are spread. “Mostly near” takes it as two standard deviations.',
      },
    },
  },
} as const satisfies RecordNode

export const origins = {
  label: 'Where entries come from',
  each: {
    label: 'Where it comes from',
    kind: 'text',
    choices: [
      { value: 'measured', label: 'Measured' },
      { value: 'stated', label: 'Stated on a label or sheet' },
      { value: 'guessed', label: 'Guessed' },
      { value: 'assumed', label: 'Assumed by the program' },
    ],
    help: 'How you know this number. What is measured deserves more trust than what is printed.',
  },
} as const satisfies RecordNode
