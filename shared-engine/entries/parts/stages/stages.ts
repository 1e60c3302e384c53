import type { ListNode, Rows } from '../../rows/group.ts'
import type { StageKindId } from '../../stage-kinds.ts'
import { beltRows } from './belt.ts'
import { chainRows } from './chain.ts'
import { fixedRows } from './fixed.ts'
import { gearRows } from './gear.ts'

/** The entries of each kind of reduction; in the order in which their own entries are listed. */
const stageRows = {
  fixed: fixedRows,
  gear: gearRows,
  belt: beltRows,
  chain: chainRows,
} as const satisfies Record<StageKindId, Rows>

export const stages = {
  label: 'Reductions',
  most: 6,
  part: 'stage',
  item: {
    label: 'Reduction',
    sections: ['', 'Strength', 'Driven shaft'],
    by: 'kind',
    variants: stageRows,
  },
} as const satisfies ListNode
