import { beltProfileIds } from '../../../reference/belts.ts'
import type { Rows } from '../../rows/group.ts'
import { centreRow, everyStage, kindRow, wheelRows } from './every.ts'

export const beltRows = {
  ...kindRow,
  ...wheelRows,
  ...everyStage,
  profile: {
    label: 'Belt profile',
    kind: 'text',
    choices: beltProfileIds.map((value) => ({ value, label: value })),
    fromTable: true,
    help: 'The tooth form and pitch, as printed on the belt.',
  },
  widthMm: {
    label: 'Belt width',
    section: 'Strength',
    kind: 'length',
    low: 1,
    high: 500,
    lever: { step: 1 },
    help: 'Width of the belt itself.',
  },
  allowableTensionN: {
    label: 'Allowable tension',
    section: 'Strength',
    kind: 'force',
    low: 1,
    high: 1e6,
    optional: true,
    help: 'The maker’s working tension for this width. Needed for a profile without an open rating; wins over the table.',
    brings: 'The belt’s limit where its profile has no open rating.',
  },
  centreMm: centreRow,
} as const satisfies Rows
