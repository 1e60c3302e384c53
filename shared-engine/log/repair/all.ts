import { indexAll } from '../data.ts'
import { continueCounters, dropUnreadable, scaleRpm, unwrapSigned } from './raw.ts'
import type { RepairTask } from './repair.ts'
import { dropFrozen, dropZeroRows } from './rows.ts'
import { dropDropouts, dropImpossible, dropSpikes } from './samples.ts'
import { dropStuck } from './stuck.ts'

/** Every repair of values, in order: each finds what those before have left. */
const steps: readonly ((task: RepairTask) => void)[] = [
  dropUnreadable,
  unwrapSigned,
  scaleRpm,
  dropZeroRows,
  dropImpossible,
  dropDropouts,
  dropSpikes,
  dropFrozen,
  (task) => indexAll(task.data),
  dropStuck,
  continueCounters,
  (task) => indexAll(task.data),
]

/** Repairs the values of a log; each repair is counted. */
export function repairValues(task: RepairTask): void {
  for (const step of steps) step(task)
}
