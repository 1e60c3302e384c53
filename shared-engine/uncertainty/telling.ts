import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import type { Checked } from '../check.ts'
import { entryAt, replaced } from '../entries/edit.ts'
import { keysOf } from '../entries/path.ts'
import { brokenRulesOf } from '../entries/rules.ts'
import type { Build } from '../entries/schema.ts'
import { entriesBehind } from '../explain/related.ts'
import type { LimitId } from '../limits/id.ts'
import { Ledger, ledgerRows } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import { machineOf } from '../machine/machine.ts'
import { mayBeVague } from './spreads.ts'

/** An entry, and how many points of a margin (a share of one) go with a hundredth of its value. */
interface TellingEntry {
  readonly path: string
  readonly value: number
  readonly reach: number
}

/** Share by which an entry is moved to see what moves with it. *Source:* assumption: small beside any tolerance. */
const step = 0.01

/**
 * The entries whose tolerances would tell most about a limit: of those behind its working, the ones that can be known
 * more or less well, each moved by a hundredth of its value, the strongest first; those that move nothing left out.
 *
 * @param checked a build that was read; nothing of it is changed
 * @param id a limit that the build has
 * *Source:* none needed, this asks the model: differences forward, one entry at a time.
 */
export function tellingEntries(checked: Checked, id: LimitId): readonly TellingEntry[] {
  const now = marginWith(checked.build, id)
  if (now === null) return []
  return entriesBehind(checked, id)
    .flatMap((path) => {
      const value = entryAt(checked.build, path)
      if (typeof value !== 'number' || !mayBeVague(path, value)) return []
      const moved = replaced(checked.build, keysOf(path), value * (1 + step)) as Build
      const margin = brokenRulesOf(moved).length > 0 ? null : marginWith(moved, id)
      const reach = margin === null ? 0 : Math.abs(margin - now)
      return reach > 0 ? [{ path, value, reach }] : []
    })
    .sort((one, other) => other.reach - one.reach)
}

function marginWith(build: Build, id: LimitId): number | null {
  const machine = machineOf(build)
  const evaluation = new Evaluation()
  evaluate(evaluation, machine)
  const ledger = new Ledger()
  measureLedger(ledger, evaluation, machine)
  return ledgerRows(ledger).find((row) => row.id === id)?.margin ?? null
}
