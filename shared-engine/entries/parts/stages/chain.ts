import { chainSizeIds } from '../../../reference/chains.ts'
import type { Rows } from '../../rows/group.ts'
import { centreRow, everyStage, kindRow, wheelRows } from './every.ts'

export const chainRows = {
  ...kindRow,
  ...wheelRows,
  ...everyStage,
  size: {
    label: 'Chain size',
    kind: 'text',
    choices: chainSizeIds.map((value) => ({ value, label: value })),
    fromTable: true,
    lever: { choices: chainSizeIds },
    help: 'The standard’s number, as stamped on the plates.',
  },
  strands: {
    label: 'Strands',
    section: 'Strength',
    kind: 'count',
    counted: 'strands',
    low: 1,
    high: 4,
    whole: true,
    default: 1,
    lever: { step: 1 },
    help: 'Chains side by side on common pins.',
  },
  centreMm: {
    ...centreRow,
    optional: true,
    brings: 'The chain’s length in links, and the distance that fits it.',
  },
} as const satisfies Rows
