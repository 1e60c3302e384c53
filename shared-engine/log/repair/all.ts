import { indexAll } from '../data.ts'
import type { InPieces } from '../pieces.ts'
import type { UndoableRepair } from '../repairs.ts'
import { continueCounters, dropUnreadable, scaleRpm, unwrapSigned } from './raw.ts'
import type { RepairTask } from './repair.ts'
import { dropFrozen, dropZeroRows } from './rows.ts'
import { dropDropouts, dropImpossible, dropSpikes } from './samples.ts'
import { dropStuck } from './stuck.ts'

interface Step {
  /** The repair that a person may take back; null: what has to be done. */
  readonly code: UndoableRepair | null
  readonly does: (task: RepairTask) => void
}

const index = (task: RepairTask) => indexAll(task.data)

/** Every repair of values, in order: each finds what those before have left. */
const steps: readonly Step[] = [
  { code: null, does: dropUnreadable },
  { code: 'signed-wrap', does: unwrapSigned },
  { code: null, does: scaleRpm },
  { code: 'zero-row', does: dropZeroRows },
  { code: 'impossible', does: dropImpossible },
  { code: 'dropout', does: dropDropouts },
  { code: 'spike', does: dropSpikes },
  { code: 'frozen', does: dropFrozen },
  { code: null, does: index },
  { code: 'stuck', does: dropStuck },
  { code: 'counter-wrap', does: continueCounters },
  { code: null, does: index },
]

/**
 * Repairs the values of a log; each repair is counted.
 *
 * @param asLogged repairs that a person has taken back
 */
export function* repairValues(task: RepairTask, asLogged: readonly UndoableRepair[] = []): InPieces<void> {
  // Repairs look at samples by their index, which one that is left out would have renewed.
  const renews = asLogged.length > 0
  for (const { code, does } of steps) {
    if (code !== null && asLogged.includes(code)) continue
    if (renews) index(task)
    does(task)
    yield
  }
}
