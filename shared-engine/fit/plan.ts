import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import { sumOfSquares } from '../numeric/linear-fit.ts'
import type { Block } from './blocks/block.ts'
import { blocksOf, missingBecause } from './choose.ts'
import { fitEntryOf, type FitEntry } from './entries.ts'
import { conditionOf } from './identify.ts'
import { machinesOf } from './model.ts'
import type { Prepared } from './prepare.ts'
import { ofGroups, refusedAlone, type Refusal } from './refuse.ts'
import { columnsAtStart, solved, type Solved } from './solve.ts'

/** Past this condition the weakest group is no longer solved whole. */
const hopeless = 1e7

/** What is fitted, after those without a chance are refused and the last of each hopeless group is held. */
interface Plan {
  readonly paths: readonly string[]
  readonly refusals: ReadonlyMap<string, Refusal>
  readonly blocks: readonly Block[]
  readonly base: Build
}

const startOf = (build: Build, entry: FitEntry): number => {
  const value = valueAt(build, keysOf(entry.path))
  return typeof value === 'number' && value !== 0 ? value : entry.start(machineOf(build))
}

/** A build in which entries that were left out and are asked for stand at their start. */
function withStarts(build: Build, entries: readonly FitEntry[]): Build {
  return entries.reduce((laid, { path, start }) => {
    if (valueAt(build, keysOf(path)) !== undefined) return laid
    const [group = '', name = ''] = keysOf(path)
    const holder = valueAt(laid, [group]) as Readonly<Record<string, unknown>>
    return { ...laid, [group]: { ...holder, [name]: start(machineOf(build)) } }
  }, build)
}

/** What of the entries asked for can be fitted to a log, and by which residuals. */
export function planOf(build: Build, prepared: Prepared, asked: readonly string[]): Plan {
  const entries = asked.flatMap((path) => fitEntryOf(path) ?? [])
  const refusals = new Map<string, Refusal>()
  for (const { path } of entries) {
    const code = missingBecause(path, build, prepared, asked)
    if (code !== null) refusals.set(path, refusedAlone(path, code))
  }
  const wanted = entries.filter(({ path }) => !refusals.has(path))
  const base = withStarts(build, wanted)
  const blocks = blocksOf(base, prepared, wanted)
  for (const { path, block } of wanted)
    if (!blocks.some(({ name, clusters }) => name === block && clusters.length > 0))
      refusals.set(path, refusedAlone(path, 'no-effect'))
  const left = wanted.filter(({ path }) => !refusals.has(path))
  return {
    paths: left.map(({ path }) => path),
    refusals,
    blocks: blocks.filter(
      ({ name, clusters }) => clusters.length > 0 && left.some(({ block }) => block === name),
    ),
    base,
  }
}

/** Entries whose column is nothing, at the start. */
function withoutEffect(columns: readonly (readonly number[])[]): readonly number[] {
  return columns.flatMap((column, at) => (sumOfSquares(column) > 0 ? [] : [at]))
}

/** A plan carried through: what was solved for, and what was refused on the way. */
interface Carried {
  readonly paths: readonly string[]
  readonly refusals: ReadonlyMap<string, Refusal>
  readonly solution: Solved | null
}

/** Solves, and holds the last of a group that cannot be solved for at all, until the rest can. */
export function carriedOut(plan: Plan): Carried {
  const refusals = new Map(plan.refusals)
  const starts = (path: string): number => {
    const entry = fitEntryOf(path)
    return entry === undefined ? 1 : startOf(plan.base, entry)
  }
  let paths = plan.paths
  const columns = () => columnsAtStart(plan.blocks, machinesOf(plan.base, paths), paths.map(starts))
  const drop = (path: string) => (paths = paths.filter((other) => other !== path))
  const idle = paths.length === 0 ? [] : withoutEffect(columns()).map((at) => paths[at] ?? '')
  for (const path of idle) {
    refusals.set(path, refusedAlone(path, 'no-effect'))
    drop(path)
  }
  const holdsOne = (slopes: readonly (readonly number[])[]): boolean => {
    const { condition, groups } = conditionOf(slopes)
    if (condition <= hopeless) return false
    const group = (groups.at(-1) ?? []).map((at) => paths[at] ?? '')
    for (const [path, refusal] of ofGroups([group])) if (!refusals.has(path)) refusals.set(path, refusal)
    drop(group.at(-1) ?? paths.at(-1) ?? '')
    return true
  }
  while (paths.length > 0 && holdsOne(columns()));
  while (paths.length > 0) {
    const solution = solved(plan.blocks, machinesOf(plan.base, paths), paths.map(starts))
    if (!holdsOne(solution.columns)) return { paths, refusals, solution }
  }
  return { paths, refusals, solution: null }
}
