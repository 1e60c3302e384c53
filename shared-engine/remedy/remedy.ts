import { worstRow } from '../limits/worst.ts'
import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { brokenRulesOf } from '../entries/rules.ts'
import type { Build } from '../entries/schema.ts'
import { check, type Checked } from '../check.ts'
import { withinMargin, type Standing } from '../limits/limit.ts'
import { leversOf, type Lever } from './levers.ts'
import { companionsOf } from './companions.ts'
import { marginAgainst, marginOf, numberIn, withChanges, type Change } from './margin.ts'
import { reachOf } from './reach.ts'
import { leastChange, nextSize, type ChangeFound } from './solve.ts'
import type { LimitId } from '../limits/id.ts'

export type { Change } from './margin.ts'

/** One entry changed as little as brings a limit to its target, or as far as it helps. */
export interface Remedy {
  readonly path: string
  readonly label: string
  /** Today; null where the entry is empty. In the entry's bench unit, or a word of its list. */
  readonly from: number | string | null
  readonly to: number | string
  /** False: this entry alone cannot bring the limit there; `to` is the best that it can do. */
  readonly reached: boolean
  /** Margin of the limit with this change, as `check` gives it. */
  readonly margin: number | null
  /** |to − from| over |from|; null for choices, empty entries and from 0. */
  readonly relativeChange: number | null
  /** m/s; null where there is none. */
  readonly topSpeedBefore: number | null
  readonly topSpeedAfter: number | null
  /** Other limits that get worse by a standing, and those that are no longer over. */
  readonly newlyOver: readonly LimitId[]
  readonly newlyNear: readonly LimitId[]
  readonly cleared: readonly LimitId[]
  /** What to take into the build. */
  readonly apply: readonly Change[]
  /** Other words of the list that would do too. */
  readonly alternatives: readonly string[]
}

/** What would bring one limit to its target. */
export interface Remedies {
  readonly name: string
  /** Null where the ledger is empty. */
  readonly limit: LimitId | null
  readonly marginNow: number | null
  readonly target: number
  /** Whether the limit is at its target already. */
  readonly holds: boolean
  /** Those that reach it first, least relative change first; then those that do not, best margin first. */
  readonly remedies: readonly Remedy[]
}

/** Changes of the margin below this are rounding, not dependence. */
const noticed = 1e-9

/**
 * For a limit, the least change of each single entry that a builder controls that brings it to a target margin, what that
 * does to top speed and to the other limits, and where one entry alone cannot do it.
 *
 * Which entries matter is found by changing them, not by a table: an entry that does not move the margin is left out.
 * Everything else stays as it is, the factor for shock too. Each line is verified by `check`.
 *
 * @param limitId the worst limit where it is not said
 * @param target margin to reach
 * *Source:* bracketed roots of the margin; the target of 20 % is common practice, no source.
 */
export function remediesFor(build: Build, limitId?: LimitId, target: number = withinMargin): Remedies {
  const before = check(build)
  const limit = limitId ?? worstRow(before.limits)?.id ?? null
  const row = before.limits.find((one) => one.id === limit)
  const nothing = { name: build.name, limit, marginNow: row?.margin ?? null, target, remedies: [] }
  if (limit === null || row === undefined) return { ...nothing, holds: limit === null }
  if (row.margin !== null && row.margin >= target) return { ...nothing, holds: true }
  const remedies = leversOf(build)
    .flatMap((lever) => remedyOf(before, limit, lever, target))
    // What stands still holds, and is no machine any more.
    .filter((one) => one.topSpeedBefore === null || one.topSpeedAfter !== null)
  return { ...nothing, holds: false, remedies: remedies.sort(byWorth) }
}

function byWorth(one: Remedy, other: Remedy): number {
  if (one.reached !== other.reached) return one.reached ? -1 : 1
  const worth = ({ reached, relativeChange, margin }: Remedy) =>
    reached ? (relativeChange ?? 1) : -(margin ?? -Infinity)
  return worth(one) - worth(other) || (one.path < other.path ? -1 : 1)
}

function remedyOf(before: Checked, limit: LimitId, lever: Lever, target: number): Remedy[] {
  const { build } = before
  return lever.choices === undefined
    ? numberRemedy(before, limit, lever, target)
    : choiceRemedy(build, before, limit, { path: lever.path, choices: lever.choices }, target)
}

function numberRemedy(before: Checked, limit: LimitId, lever: Lever, target: number): Remedy[] {
  const { path, step = 1, sizes } = lever
  const field = fieldOf(path)
  if (field?.low === undefined || field.high === undefined) return []
  const start = startOf(before, path)
  // What a jam would put on a limiter can be more than one can be entered for.
  const from =
    numberIn(before.build, path) ?? (start === null ? null : Math.min(field.high, Math.max(field.low, start)))
  if (from === null) return []
  const { least, most } = reachOf(before.build, lever, field, from)
  const measure = marginAgainst(before.build, path, limit)
  const whole = field.whole === true
  const ways = [least, most]
    .filter((to) => to !== from)
    .flatMap((to) =>
      sizes === undefined
        ? (leastChange(measure, target, { from, to, step, whole }) ?? [])
        : (nextSize(measure, target, sizesTowards(sizes, from, to)) ?? []),
    )
  const found = bestOf(ways, from)
  const now = marginOf(before.build, limit)
  if (found === null || !(found.measure > now + noticed)) return []
  const apply = [{ path, value: found.value }, ...companionsOf(before.build, path, found.value)]
  return [judged(before, limit, apply, target, [])]
}

/** The way that reaches it with less change; where none does, the one that gets farthest. */
function bestOf(ways: readonly ChangeFound[], from: number): ChangeFound | null {
  const reached = ways.filter((way) => way.reached)
  const distance = (way: ChangeFound) => Math.abs(way.value - from)
  if (reached.length > 0) return reached.reduce((best, one) => (distance(one) < distance(best) ? one : best))
  return ways.reduce<ChangeFound | null>(
    (best, one) => (best === null || one.measure > best.measure ? one : best),
    null,
  )
}

/** The sizes between today's and an end, nearest first. */
function sizesTowards(sizes: readonly number[], from: number, to: number): readonly number[] {
  const sign = Math.sign(to - from)
  return sizes
    .filter((size) => sign * (size - from) > 0 && sign * (to - size) >= 0)
    .toSorted((one, other) => sign * (one - other))
}

/**
 * Where a lever starts that the build does not have: a current limit from the current that the motor draws without one, a
 * torque limiter from what a jam puts on its shaft without one.
 *
 * @returns bench unit; null where there is none
 */
function startOf(checked: Checked, path: string): number | null {
  if (path === 'controller.currentLimitAmps') return checked.figures.stallMotorAmps
  const stage = /^stages\.(\d+)\.slipTorqueNm$/.exec(path)?.[1]
  return stage === undefined ? null : jamTorque(checked, Number(stage))
}

/** N·m on the driven shaft of a reduction, counted from 0, in the worst jam; no loss on the way. */
function jamTorque({ machine, figures }: Checked, stage: number): number | null {
  const { track, motor, stages } = machine
  const pull = Math.max(figures.jamForceN ?? 0, figures.jamFreeForceN ?? 0)
  const after = stages.slice(stage + 1).reduce((ratio, part) => ratio * part.ratio, 1)
  const torque = (pull * track.radius * track.count) / motor.count / after
  return torque > 0 ? Number(torque.toPrecision(3)) : null
}

function choiceRemedy(
  build: Build,
  before: Checked,
  limit: LimitId,
  { path, choices }: { readonly path: string; readonly choices: readonly string[] },
  target: number,
): Remedy[] {
  const from = valueAt(build, keysOf(path))
  if (typeof from !== 'string') return []
  const now = marginOf(build, limit)
  const measured = choices
    .filter((choice) => choice !== from)
    .map((choice) => ({ choice, changes: choiceChanges(build, path, choice) }))
    .map(({ choice, changes }) => ({ choice, changes, changed: withChanges(build, changes) }))
    .filter(({ changed }) => brokenRulesOf(changed).length === 0)
    .map((one) => ({ ...one, margin: marginOf(one.changed, limit) }))
    .filter(({ margin }) => margin > now + noticed)
    .sort((one, other) => one.margin - other.margin)
  const enough = measured.filter(({ margin }) => margin >= target)
  const chosen = enough[0] ?? measured.at(-1)
  if (chosen === undefined) return []
  const others = enough.slice(1).map(({ choice }) => choice)
  return [judged(before, limit, chosen.changes, target, others)]
}

const ownStrengths = [
  'shearStrengthMpa',
  'tensileStrengthMpa',
  'bearingStrengthMpa',
  'workShearMpa',
  'workTensileMpa',
  'workBearingMpa',
] as const

/** A material of the table takes the place of own strengths. */
function choiceChanges(build: Build, path: string, choice: string): Change[] {
  const leaves = path === 'track.tooth.material' && build.track.tooth?.material === 'custom'
  const given = ownStrengths.filter((name) => valueAt(build, ['track', 'tooth', name]) !== undefined)
  const gone = leaves ? given.map((name) => ({ path: `track.tooth.${name}`, value: null })) : []
  return [{ path, value: choice }, ...gone]
}

/** Checks the changed build and states what came of it; what `check` says decides whether the target is reached. */
function judged(
  before: Checked,
  limit: LimitId,
  apply: readonly Change[],
  target: number,
  alternatives: readonly string[],
): Remedy {
  const after = check(withChanges(before.build, apply))
  const [{ path, value: to } = { path: '', value: '' }] = apply
  const margin = after.limits.find((row) => row.id === limit)?.margin ?? null
  const from = valueAt(before.build, keysOf(path))
  const number = typeof from === 'number' && typeof to === 'number' && from !== 0
  return {
    path,
    label: fieldOf(path)?.label ?? path,
    from: typeof from === 'number' || typeof from === 'string' ? from : null,
    to: to ?? '',
    reached: margin !== null && margin >= target,
    margin,
    relativeChange: number ? Math.abs(to - from) / Math.abs(from) : null,
    topSpeedBefore: before.figures.topSpeedMps,
    topSpeedAfter: after.figures.topSpeedMps,
    ...changesOf(before, after, limit),
    apply,
    alternatives,
  }
}

/** Which other limits change their standing. */
function changesOf(before: Checked, after: Checked, limit: LimitId) {
  const were = new Map(before.limits.map((row) => [row.id, row.standing]))
  const are = new Map(after.limits.map((row) => [row.id, row.standing]))
  // What is no longer judged is not put right.
  const isHeld = (standing: Standing | undefined) => standing === 'within' || standing === 'near'
  const others = after.limits.filter((row) => row.id !== limit)
  const newly = (standing: Standing, from: readonly (Standing | undefined)[]) =>
    others.filter((row) => row.standing === standing && from.includes(were.get(row.id))).map((row) => row.id)
  return {
    newlyOver: newly('over', ['within', 'near', undefined]),
    newlyNear: newly('near', ['within', undefined]),
    cleared: before.limits
      .filter((row) => row.standing === 'over' && row.id !== limit && isHeld(are.get(row.id)))
      .map((row) => row.id),
  }
}
