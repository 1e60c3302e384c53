import type { ListNode } from '../../rows/group.ts'
import { stageRows } from './kinds.ts'

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
