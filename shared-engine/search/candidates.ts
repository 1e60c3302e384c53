import type { Machine, StagePart } from '../machine/parts.ts'
import { stagePartOf } from '../machine/stage.ts'
import { machineOf, trainOf } from '../machine/machine.ts'
import { completeBuild } from '../entries/read.ts'
import { brokenRulesOf } from '../entries/rules.ts'
import type { Build, Stage, StoredBuild } from '../entries/schema.ts'
import type { Mistake } from '../mistakes/mistake.ts'
import { withChoices, type CandidateChoice } from './candidate-build.ts'
import type { SearchAxis } from './space-axes.ts'
import type { SearchPlan } from './space.ts'

type Writable<T> = { -readonly [K in keyof T]: T[K] }

/** Parts of the machine that one group of axes decides, or why these values do not go together. */
type Piece =
  { readonly ok: true; put(machine: Writable<Machine>): void } | { readonly ok: false; reason: number }

/**
 * Axes that decide the same parts: both wheels of a reduction, or one axis alone. Its pieces are made once each, since
 * a candidate differs from the one before it in few of them.
 */
interface AxisGroup {
  readonly size: number
  /** Whether the train has to be put together again. */
  readonly turnsTrain: boolean
  pieceOf(place: number): Piece
}

/** A rule of the build that some candidates break, shown by the first one met in the order of their numbers. */
interface BrokenRule {
  readonly mistake: Mistake
}

/** Pieces are kept up to this many of a group; beyond, they are made anew whenever they are needed. */
const mostKept = 65_536

/**
 * The machines of a plan's candidates, one after the other in the same object: parts are looked up and not worked out
 * again. Equal in every digit to `machineOf` of the candidate's build.
 */
export class Candidates {
  readonly total: number
  /** Rules that candidates met so far break; `reason` below counts in it. */
  readonly broken: BrokenRule[] = []
  readonly machine: Machine
  readonly #writable: Writable<Machine>
  readonly #groups: readonly AxisGroup[]
  readonly #places: number[]

  constructor(plan: SearchPlan) {
    this.total = plan.total
    this.#writable = { ...machineOf(completeBuild(plan.stored)) }
    this.#writable.stages = [...this.#writable.stages]
    this.machine = this.#writable
    this.#groups = groupsOf(plan, this.broken)
    this.#places = this.#groups.map(() => -1)
  }

  /**
   * Puts the machine of a candidate together.
   *
   * @param index its number, 0 to total − 1
   * @returns −1, or the place in `broken` of the rule that its build breaks
   */
  set(index: number): number {
    const groups = this.#groups
    let rest = index
    let train = false
    let reason = -1
    for (let at = groups.length - 1; at >= 0; at -= 1) {
      const group = groups[at]
      if (group === undefined) continue
      const above = Math.floor(rest / group.size)
      const place = rest - above * group.size
      rest = above
      if (this.#places[at] === place) continue
      const piece = group.pieceOf(place)
      if (piece.ok) {
        piece.put(this.#writable)
        this.#places[at] = place
        train ||= group.turnsTrain
      } else {
        this.#places[at] = -1
        reason = piece.reason
      }
    }
    // A broken piece leaves the train of the one before: its place is unset, so the next sound one turns it again.
    if (train) this.#writable.train = trainOf(this.machine.motor, this.machine.stages)
    return reason
  }
}

function groupsOf(plan: SearchPlan, broken: BrokenRule[]): AxisGroup[] {
  const groups = new Map<string, SearchAxis[]>()
  for (const axis of plan.axes) {
    const key = axis.path.startsWith('stages.') ? axis.path.split('.').slice(0, 2).join('.') : axis.path
    groups.set(key, [...(groups.get(key) ?? []), axis])
  }
  const base = completeBuild(plan.stored)
  return [...groups].map(([key, axes]) => groupOf(plan.stored, base, key, axes, broken))
}

function groupOf(
  stored: StoredBuild,
  base: Build,
  key: string,
  axes: readonly SearchAxis[],
  broken: BrokenRule[],
): AxisGroup {
  const size = axes.reduce((product, axis) => product * axis.values.length, 1)
  const kept: (Piece | undefined)[] = []
  const stage = key.startsWith('stages.') ? Number(key.split('.')[1]) : null
  const make = (place: number): Piece => {
    const choices = choicesAt(axes, place)
    if (stage !== null) return stagePiece(base, stage, choices, broken)
    // A motor brings defaults of its own; of the others the build has them already.
    const build = key === 'motor' ? completeBuild(withChoices(stored, choices)) : withNumbers(base, choices)
    return partPiece(build, key, broken)
  }
  return {
    size,
    turnsTrain: stage !== null || key === 'motor',
    pieceOf: (place) => {
      if (size > mostKept) return make(place)
      return (kept[place] ??= make(place))
    },
  }
}

function choicesAt(axes: readonly SearchAxis[], place: number): CandidateChoice[] {
  const choices: CandidateChoice[] = []
  let rest = place
  for (const { path, label, values, motors } of axes.toReversed()) {
    const value = values[rest % values.length] ?? NaN
    rest = Math.floor(rest / values.length)
    choices.unshift({ path, label, value, motor: motors?.[value] ?? null })
  }
  return choices
}

/** Place of a rule in the list, where it is added if it is new: the same path and trouble is the same rule. */
function reasonOf(mistake: Mistake, broken: BrokenRule[]): number {
  const known = broken.findIndex(
    (rule) => rule.mistake.path === mistake.path && rule.mistake.code === mistake.code,
  )
  return known >= 0 ? known : broken.push({ mistake }) - 1
}

function refused(mistakes: readonly Mistake[], broken: BrokenRule[]): Piece | null {
  const [first] = mistakes
  return first === undefined ? null : { ok: false, reason: reasonOf(first, broken) }
}

/** A complete build with other numbers; it has the shape of a stored one, so that the same edit serves. */
function withNumbers(base: Build, choices: readonly CandidateChoice[]): Build {
  return withChoices(base, choices) as Build
}

function stagePiece(
  base: Build,
  at: number,
  choices: readonly CandidateChoice[],
  broken: BrokenRule[],
): Piece {
  const entries = choices.map(({ path, value }) => [path.slice(path.lastIndexOf('.') + 1), value] as const)
  const stage = { ...base.stages[at], ...Object.fromEntries(entries) } as Stage
  // The rules look for nothing outside the reduction; the ones before it keep its place in the list, and their path.
  const alone = { stages: [...Array.from({ length: at }, () => ({})), stage] }
  const trouble = refused(brokenRulesOf(alone), broken)
  if (trouble !== null) return trouble
  const part = stagePartOf(stage)
  return {
    ok: true,
    put: (machine) => {
      const stages = machine.stages as StagePart[] // this object's own list, made in the constructor
      stages[at] = part
    },
  }
}

/** Motor, pack, controller or track, taken out of the machine of the build with that entry. */
function partPiece(build: Build, key: string, broken: BrokenRule[]): Piece {
  const trouble = refused(brokenRulesOf(build), broken)
  if (trouble !== null) return trouble
  const machine = machineOf(build)
  const part = key.split('.')[0] ?? ''
  const put = putters[part]
  if (put === undefined) throw new Error(`no part for ${key}`)
  return { ok: true, put: (into) => put(into, machine) }
}

/** What takes one part of a machine out of another, by the part of the build that decides it alone. */
const putters: Readonly<Record<string, (into: Writable<Machine>, from: Machine) => void>> = {
  motor: (into, { motor }) => void (into.motor = motor),
  pack: (into, { pack }) => void (into.pack = pack),
  controller: (into, { controller }) => void (into.controller = controller),
  track: (into, { track }) => void (into.track = track),
}
