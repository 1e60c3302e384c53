import type { RecordNode } from '../rows/group.ts'

/** By guided test. They are checked by the reader of readings when they are opened: no figure reads them. */
export const readings = {
  label: 'Readings of guided tests',
  each: {
    label: 'Readings',
    section: null,
    kind: 'text',
    document: true,
    longest: 200_000,
    help: 'What was read in a guided test, as it was typed, so that a result can be opened and corrected later.',
  },
} as const satisfies RecordNode
