import { isJsonGroup, type JsonGroup } from '../../../shared-engine/entries/json-group.ts'
import { readColumns, type ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import { recallValue, remember } from '../../state/remembered.ts'
import { isPlain } from './column-choice.ts'

/** More shapes than a person's recorders write. */
const most = 40

function all(): JsonGroup {
  const kept = recallValue('logColumns')
  return isJsonGroup(kept) ? kept : {}
}

/** What was laid down for logs of a shape; null: nothing, or nothing that can be read. */
export function keptColumns(fingerprint: string): ColumnsChoice | null {
  const kept = all()
  if (!Object.hasOwn(kept, fingerprint)) return null
  const read = readColumns(new TextEncoder().encode(JSON.stringify(kept[fingerprint])))
  return read.ok && !isPlain(read.value) ? read.value : null
}

/** Keeps what was laid down for logs of a shape; nothing laid down: forgets it. */
export function keepColumns(fingerprint: string, choice: ColumnsChoice): void {
  const others = Object.entries(all()).filter(([shape]) => shape !== fingerprint)
  const kept = isPlain(choice) ? others : [[fingerprint, choice] as const, ...others]
  remember('logColumns', JSON.stringify(Object.fromEntries(kept.slice(0, most))))
}
