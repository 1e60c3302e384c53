import type { FieldTable } from './field.ts'

/** The build as a whole. */
export const generalFields = {
  format: {
    label: 'Format',
    kind: 'text',
    help: 'Says that this file is a build: always "pitchline-build".',
  },
  version: {
    label: 'Version',
    kind: 'count',
    low: 1,
    whole: true,
    help: 'Which version of the build file this is. Older files are brought up to date when they are read.',
  },
  name: { label: 'Name', kind: 'text', longest: 120, help: 'What you call this machine.' },
  notes: {
    label: 'Notes',
    kind: 'text',
    longest: 10_000,
    default: '',
    help: 'Anything worth remembering; no figure reads it.',
  },
} as const satisfies FieldTable

/** Tolerances and origins: keyed by the path of the entry that they speak of. */
export const evidenceFields = {
  'tolerances.*.plusMinusPercent': {
    label: 'Tolerance',
    kind: 'fraction',
    low: 0,
    high: 1000,
    optional: true,
    help: 'How far the true value may lie from the entry, as a share of it.',
  },
  'tolerances.*.plusMinus': {
    label: 'Tolerance',
    kind: 'none',
    low: 0,
    high: 1e9,
    optional: true,
    help: 'How far the true value may lie from the entry, in the unit of the entry.',
  },
  'tolerances.*.shape': {
    label: 'Spread',
    kind: 'text',
    choices: [
      { value: 'uniform', label: 'Anywhere within, equally likely' },
      { value: 'normal', label: 'Mostly near the entry' },
    ],
    help: 'How the values within the tolerance are spread. “Mostly near” takes it as two standard deviations.',
  },
  'origins.*': {
    label: 'Where it comes from',
    kind: 'text',
    choices: [
      { value: 'measured', label: 'Measured' },
      { value: 'stated', label: 'Stated on a label or sheet' },
      { value: 'guessed', label: 'Guessed' },
    ],
    help: 'How you know this number. What is measured deserves more trust than what is printed.',
  },
} as const satisfies FieldTable
