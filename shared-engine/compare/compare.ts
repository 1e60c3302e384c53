import { entryLabelOf, leavesOf } from '../entries/changes.ts'
import { entryAt } from '../entries/edit.ts'
import { fieldOf } from '../entries/fields.ts'
import { valueAt, keysOf } from '../entries/path.ts'
import { completeBuild } from '../entries/read.ts'
import type { Build, StoredBuild } from '../entries/schema.ts'
import { check, type Checked } from '../check.ts'
import { figureTable, type NamedFigure } from '../figures/table.ts'
import type { LimitRow } from '../limits/ledger.ts'
import { limitOf } from '../limits/table.ts'
import type { QuantityKind } from '../units/kinds.ts'
import { runFromRest, type RunCurve } from '../vehicle/run-curve.ts'
import { thrustCurve, type ThrustCurve } from '../vehicle/curves.ts'
import type { LimitId } from '../limits/id.ts'

export { entryLabelOf }

/** Most builds side by side: as many as can be told apart in one plot. */
export const mostCompared = 4

/** How far a value lies from the first build's. */
export interface Difference {
  /** In the figure's unit. */
  readonly by: number
  /** As a share of the first build's size; null where that is 0. */
  readonly share: number | null
}

/** One figure of every build. */
interface ComparedFigure {
  readonly figure: NamedFigure
  readonly values: readonly (number | null)[]
  /** From the first build; null for it, and where one of the two does not exist. */
  readonly differences: readonly (Difference | null)[]
}

/** An entry that is not the same in all builds. */
export interface ComparedEntry {
  readonly path: string
  /** With its part: "Reduction 1: Driver teeth". */
  readonly label: string
  readonly kind: QuantityKind
  /** In force: as entered, or the default; undefined where there is none. In the bench unit. */
  readonly values: readonly unknown[]
  /** Whether it was entered. */
  readonly entered: readonly boolean[]
}

/** One limit of every build; null where it is not in the ledger. */
interface ComparedLimit {
  readonly id: LimitId
  readonly label: string
  readonly rows: readonly (LimitRow | null)[]
}

/** Up to four builds side by side. */
export interface Comparison {
  readonly checked: readonly Checked[]
  readonly figures: readonly ComparedFigure[]
  /** In the order of the builds' own entries. */
  readonly entries: readonly ComparedEntry[]
  /** By the worst margin that any build has there. */
  readonly limits: readonly ComparedLimit[]
}

/**
 * Puts builds side by side: their figures, what differs between them, where each limit stands.
 *
 * @param builds 1 to 4, each of them read
 */
export function compare(builds: readonly StoredBuild[]): Comparison {
  if (builds.length < 1 || builds.length > mostCompared) throw new Error(`${builds.length} builds to compare`)
  const complete = builds.map(completeBuild)
  const checked = complete.map(check)
  return {
    checked,
    figures: figureTable.map((figure) => comparedFigure(figure, checked)),
    entries: comparedEntries(builds, complete),
    limits: comparedLimits(checked),
  }
}

/** The curves of the builds for one plot, each in its own speeds. */
export function comparedCurves(
  checked: readonly Checked[],
): readonly { readonly thrust: ThrustCurve; readonly run: RunCurve | null }[] {
  return checked.map(({ machine }) => ({ thrust: thrustCurve(machine), run: runFromRest(machine) }))
}

function comparedFigure(figure: NamedFigure, checked: readonly Checked[]): ComparedFigure {
  const values = checked.map(({ figures }) => figures[figure.name])
  const [first = null] = values
  const differences = values.map((value, at): Difference | null => {
    if (at === 0 || value === null || first === null) return null
    const by = value - first
    return { by, share: first === 0 ? null : by / Math.abs(first) }
  })
  return { figure, values, differences }
}

/** What says nothing of the machine. */
const aside = new Set(['format', 'version', 'name', 'notes', 'origins', 'readings'])

function comparedEntries(builds: readonly StoredBuild[], complete: readonly Build[]): ComparedEntry[] {
  const paths = new Set(complete.flatMap((build) => leavesOf(build)))
  const machine = [...paths].filter((path) => !aside.has(keysOf(path)[0] ?? ''))
  return machine.flatMap((path) => {
    const values = complete.map((build) => valueAt(build, keysOf(path)))
    if (values.every((value) => value === values[0])) return []
    const entered = builds.map((build) => entryAt(build, path) !== undefined)
    return [{ path, label: entryLabelOf(path), kind: fieldOf(path)?.kind ?? 'text', values, entered }]
  })
}

function comparedLimits(checked: readonly Checked[]): ComparedLimit[] {
  const ids = new Set(checked.flatMap(({ limits }) => limits.map((limit) => limit.id)))
  const compared = [...ids].map((id) => ({
    id,
    label: limitOf(id)?.label ?? id,
    rows: checked.map(({ limits }) => limits.find((limit) => limit.id === id) ?? null),
  }))
  // A margin that can't be formed is worse than any number.
  const worst = ({ rows }: ComparedLimit) =>
    Math.min(...rows.map((row) => (row === null ? Infinity : (row.margin ?? -Infinity))))
  return compared.sort((one, other) => {
    const [first, second] = [worst(one), worst(other)]
    if (first !== second) return first < second ? -1 : 1
    return one.id < other.id ? -1 : 1
  })
}
