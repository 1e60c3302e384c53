import { withEntry } from '../entries/edit.ts'
import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { machineOf } from '../machine/machine.ts'
import type { Build, StoredBuild } from '../entries/schema.ts'
import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { Ledger, limitAt } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import { companionsOf } from './companions.ts'
import { buildSetter, rulesKeeper } from '../uncertainty/build.ts'
import type { LimitId } from '../limits/id.ts'

/** One entry to change; null takes it out. */
export interface Change {
  readonly path: string
  readonly value: number | string | null
}

/** A build with changes; entries that they take out are left to their default or absence. */
export function withChanges(build: Build, changes: readonly Change[]): Build {
  // A complete build is a stored one in which nothing is left to defaults.
  const stored = changes.reduce<StoredBuild>(
    (edited, { path, value }) => withEntry(edited, path, value ?? undefined),
    build,
  )
  return stored as Build
}

/** What an entry is, where it is a number that the build has. */
export function numberIn(build: Build, path: string): number | null {
  const value = valueAt(build, keysOf(path))
  return typeof value === 'number' ? value : null
}

function isAllowed({ path, value }: { readonly path: string; readonly value: number }): boolean {
  const { low = -Infinity, high = Infinity } = fieldOf(path) ?? {}
  return value >= low && value <= high
}

const e = new Evaluation()
const ledger = new Ledger()

/**
 * Margin of one limit of a build that keeps its rules.
 *
 * @returns −Infinity where none can be formed or the limit is left out of the ledger (a machine that does not get going
 * keeps cool, but that is no remedy)
 */
export function marginOf(build: Build, limitId: LimitId): number {
  const machine = machineOf(build)
  evaluate(e, machine)
  measureLedger(ledger, e, machine)
  for (let row = 0; row < ledger.count; row += 1) {
    if (limitAt(ledger, row)?.id === limitId) return ledger.margin[row] ?? -Infinity
  }
  return -Infinity
}

/** Margin of one limit as a function of one number of the build; NaN where that number makes no build. */
export function marginAgainst(build: Build, path: string, limitId: LimitId): (value: number) => number {
  const paths = [path, ...companionsOf(build, path, numberIn(build, path) ?? NaN).map((one) => one.path)]
  const put = buildSetter(build, paths)
  const keepsRules = rulesKeeper(build, paths)
  const values = new Float64Array(paths.length)
  return (value) => {
    values[0] = value
    const companions = companionsOf(build, path, value)
    if (!companions.every(isAllowed)) return NaN
    companions.forEach((one, at) => (values[at + 1] = one.value))
    const changed = put(values)
    return keepsRules(changed) ? marginOf(changed, limitId) : NaN
  }
}
