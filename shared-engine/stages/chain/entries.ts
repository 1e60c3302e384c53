import { chainSizeIds, chainSizeOf, type ChainSizeId } from '../../reference/chains.ts'
import type { StageKindEntries } from '../../entries/parts/stages/kind.ts'
import type { Rows } from '../../entries/rows/group.ts'
import { chainWheelRadius } from './geometry.ts'
import { centreRow, everyStage, wheelRows } from '../../entries/parts/stages/every.ts'

export const chainRows = {
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

export const chainEntries: StageKindEntries<typeof chainRows> = {
  label: 'Roller chain',
  short: 'Chain',
  offered: 2,
  rows: chainRows,
  start: (teeth) => ({ ...teeth, size: '06B' }),
  teethOf: (stage) => stage,
  pitchRadius: (entries, stage, teeth) => {
    const size = entries.word(`${stage}.size`) as ChainSizeId | undefined
    return size === undefined ? undefined : chainWheelRadius(chainSizeOf(size).pitch, teeth)
  },
  unrated: null,
}
