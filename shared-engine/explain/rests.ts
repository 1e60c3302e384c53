import { assumedPaths } from '../assume/assumed.ts'
import { assumptionOf } from '../assume/table.ts'
import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import type { Checked } from '../check.ts'
import { entryAt, replaced } from '../entries/edit.ts'
import { fieldOf } from '../entries/fields.ts'
import { keysOf } from '../entries/path.ts'
import { brokenRulesOf } from '../entries/rules.ts'
import type { Build } from '../entries/schema.ts'
import type { LimitId } from '../limits/id.ts'
import { Ledger, ledgerRows } from '../limits/ledger.ts'
import type { Standing } from '../limits/limit.ts'
import { measureLedger } from '../limits/measure.ts'
import { machineOf } from '../machine/machine.ts'
import { entriesBehind } from './related.ts'

/** How far a top speed moves with one assumed entry, m/s; null where the machine then does not move off. */
interface SpeedReach {
  readonly path: string
  readonly least: number | null
  readonly most: number | null
}

/** What of a check rests on numbers that nobody has entered. */
export interface Rests {
  /** By limit: the assumed entries with which its standing would be another one; limits that none of them moves are not in it. */
  readonly limits: ReadonlyMap<LimitId, readonly string[]>
  /** Assumed entries that move the top speed by more than a hundredth, the strongest first. */
  readonly topSpeed: readonly SpeedReach[]
}

/** Factor for an assumed number that is no estimate of others but a value to start from. *Source:* assumption. */
const startWithin = 2

/** Share of the top speed below which an entry is not named. *Source:* assumption. */
const leastReach = 0.01

interface Outcome {
  readonly standings: ReadonlyMap<LimitId, Standing>
  readonly topSpeed: number | null
}

/**
 * Which limits, and how much of the top speed, hang on assumed entries: each is put to both ends of what it may be, one at
 * a time, and the build worked out again; a word to each other word that it may be. A word of a long list (a material, a
 * belt's profile) counts for every limit whose working puts it in.
 *
 * @param checked a build that was read; nothing of it is changed
 * *Source:* none needed, this asks the model; one entry at a time, so that two errors that add up are not seen.
 */
export function restsOf(checked: Checked): Rests {
  const paths = assumedPaths(checked.build)
  const limits = new Map<LimitId, Set<string>>()
  const rest = (id: LimitId, path: string) => limits.set(id, (limits.get(id) ?? new Set<string>()).add(path))
  const topSpeed: SpeedReach[] = []
  const words: string[] = []
  for (const path of paths) {
    const others = othersOf(path, entryAt(checked.build, path))
    if (others === null) {
      words.push(path)
      continue
    }
    const ends = others.flatMap((end) => outcomeWith(checked.build, path, end) ?? [])
    for (const { id, standing } of checked.limits)
      if (ends.some(({ standings }) => standings.get(id) !== standing)) rest(id, path)
    const reach = reachOf(path, checked.figures.topSpeedMps, ends)
    if (reach !== null) topSpeed.push(reach)
  }
  if (words.length > 0)
    for (const { id } of checked.limits)
      for (const path of entriesBehind(checked, id)) if (words.includes(path)) rest(id, path)
  return {
    limits: new Map([...limits].map(([id, behind]) => [id, [...behind]])),
    topSpeed: topSpeed.sort((one, other) => widthOf(other) - widthOf(one)),
  }
}

/** Words of a list that is short enough to try them all. */
const fewWords = 6

/**
 * What an assumed entry may be instead: both ends of a number, in its bench unit and range (none of one that is exact), or
 * the other words of a short list; null for a word of a long one.
 */
function othersOf(path: string, value: unknown): readonly (number | string)[] | null {
  const field = fieldOf(path)
  const within = assumptionOf(path)?.within ?? startWithin
  if (field === undefined) return []
  if (typeof value !== 'number') {
    const words = field.choices?.map((choice) => choice.value) ?? []
    return words.length > fewWords ? null : words.filter((word) => word !== value)
  }
  if (within === 1) return []
  return [value / within, value * within].map((end) =>
    Math.min(
      field.high ?? Infinity,
      Math.max(field.low ?? -Infinity, field.whole === true ? Math.round(end) : end),
    ),
  )
}

/** The build with another entry, worked out; null where the entries then contradict each other. */
function outcomeWith(build: Build, path: string, value: number | string): Outcome | null {
  const other = replaced(build, keysOf(path), value) as Build
  if (brokenRulesOf(other).length > 0) return null
  const machine = machineOf(other)
  const evaluation = new Evaluation()
  evaluate(evaluation, machine)
  const ledger = new Ledger()
  measureLedger(ledger, evaluation, machine)
  return {
    standings: new Map(ledgerRows(ledger).map(({ id, standing }) => [id, standing])),
    topSpeed: evaluation.top.exists ? evaluation.top.groundSpeed : null,
  }
}

function reachOf(path: string, now: number | null, ends: readonly Outcome[]): SpeedReach | null {
  if (ends.length === 0) return null
  const speeds = [now, ...ends.map(({ topSpeed }) => topSpeed)]
  const known = speeds.filter((speed) => speed !== null)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  if (known.length === speeds.length && most - least <= leastReach * most) return null
  return {
    path,
    least: known.length < speeds.length ? null : least,
    most: known.length === 0 ? null : most,
  }
}

const widthOf = ({ least, most }: SpeedReach) =>
  most === null ? 0 : least === null ? Infinity : (most - least) / most
