import type { Rows } from '../rows/group.ts'

export const buildFormat = 'pitchline-build'
export const buildVersion = 2

/** The build as a whole. */
export const general = {
  format: {
    label: 'Format',
    section: null,
    kind: 'text',
    always: buildFormat,
    help: 'Says that this file is a build: always "pitchline-build".',
  },
  version: {
    label: 'Version',
    section: null,
    kind: 'count',
    low: 1,
    whole: true,
    always: buildVersion,
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
} as const satisfies Rows
