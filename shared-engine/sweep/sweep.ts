import { entryAt, entryInForce, withEntry } from '../entries/edit.ts'
import { allowedOf, fieldOf } from '../entries/fields.ts'
import type { Field } from '../entries/fields.ts'
import { completeBuild, readStoredBuildValue } from '../entries/read.ts'
import { brokenRulesOf } from '../entries/rules.ts'
import type { Build, StoredBuild } from '../entries/schema.ts'
import { limitOf } from '../limits/table.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import { entryLabelOf } from '../compare/compare.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { measureOf, type Measure } from '../search/space-measure.ts'
import { crossingsOf, type Crossing } from './crossings.ts'
import { SweptMachine } from './machine.ts'
import type { LimitId } from '../limits/id.ts'

/** Most steps of a sweep: as many as a plot has pixels. */
const mostSteps = 1_000

/** One entry varied over a range. */
export interface SweepRequest {
  readonly path: string
  /** In the entry's bench unit. */
  readonly from: number
  readonly to: number
  /** Steps from one end to the other: one point more than steps. Whole-number entries take whole steps. */
  readonly steps: number
  /** Names of figures to draw against the entry, or `worstMargin`. */
  readonly figures: readonly string[]
}

/** One point of a sweep: the figures there, or why there is no such build. */
export interface SweepPoint {
  /** In the entry's bench unit. */
  readonly value: number
  /** In the order asked for; all null at a gap. */
  readonly figures: readonly (number | null)[]
  /** Of the whole ledger; null at a gap and where it can't be formed. */
  readonly margin: number | null
  readonly worstLimit: LimitId | null
  /** The rule of the build that this value breaks; null where it is sound. */
  readonly gap: Mistake | null
}

/** One entry varied, and what becomes of the machine. */
export interface Sweep {
  readonly path: string
  readonly label: string
  readonly field: Field
  readonly measures: readonly Measure[]
  readonly points: readonly SweepPoint[]
  /** The build as it is; null where the entry is neither there nor has a default. */
  readonly today: SweepPoint | null
  /** Where limits are crossed, by rising value. */
  readonly crossings: readonly (Crossing & { readonly label: string })[]
}

const mistake = (code: Mistake['code'], path: string, value: unknown, allowed: string): Mistake => ({
  code,
  path,
  value: value === undefined ? '' : shown(value),
  allowed,
  kept: '',
})

/** A request that was found to fit its build. */
export interface SweepPlan {
  readonly stored: StoredBuild
  readonly path: string
  readonly field: Field
  readonly measures: readonly Measure[]
  /** Values of the entry, in its bench unit, rising. */
  readonly values: readonly number[]
}

/**
 * Varies one number of a build and works out the machine at each value.
 *
 * @param stored a build that was read
 * @returns the sweep, or every mistake in the request
 */
export function sweep(stored: StoredBuild, request: SweepRequest): Result<Sweep> {
  const plan = sweepPlanOf(stored, request)
  return plan.ok ? succeeded(sweepOf(plan.value)) : plan
}

/** The whole sweep of a plan. */
export function sweepOf(plan: SweepPlan): Sweep {
  return sweepOfPoints(plan, plan.values.map(new SweepMachine(plan).pointAt))
}

/** Holds a request against a build: the plan, or every mistake in it. */
export function sweepPlanOf(stored: StoredBuild, request: SweepRequest): Result<SweepPlan> {
  const field = fieldOf(request.path)
  const mistakes = field === undefined ? [] : rangeMistakes(field, request)
  const fits = field !== undefined && isNumber(field) && takesEntry(stored, request)
  if (!fits)
    mistakes.unshift(
      mistake('cannot-vary', request.path, undefined, 'a number that this build has or may have'),
    )
  const measures = request.figures.flatMap((figure): Measure[] => {
    const measure = measureOf({ figure }, '--figures')
    if (measure.ok) return [measure.value]
    mistakes.push(...measure.mistakes)
    return []
  })
  if (mistakes.length > 0 || field === undefined) return failed(mistakes)
  const values = valuesOf(request, field.whole === true)
  return succeeded({ stored, path: request.path, field, measures, values })
}

const isNumber = (field: Field) =>
  field.kind !== 'text' && field.choices === undefined && field.high !== undefined

function rangeMistakes(field: Field, { path, from, to, steps }: SweepRequest): Mistake[] {
  const { low = -Infinity, high = Infinity } = field
  const outside = [from, to].filter((value) => !(value >= low && value <= high))
  const mistakes = outside.map((value) => mistake('out-of-range', path, value, allowedOf(field)))
  if (!(to > from)) mistakes.push(mistake('out-of-range', 'to', to, `above ${from}`))
  if (!Number.isInteger(steps) || steps < 1 || steps > mostSteps) {
    mistakes.push(
      mistake('out-of-range', 'steps', steps, `a whole number, 1 to ${mostSteps.toLocaleString('en')}`),
    )
  }
  return mistakes
}

/** Whether the build may hold the entry: what is wrong with it there is at most its range, or a rule between entries. */
function takesEntry(stored: StoredBuild, { path, from }: SweepRequest): boolean {
  const edited = withEntry(stored, path, from)
  if (entryAt(edited, path) !== from) return false // an edit makes no list longer
  const read = readStoredBuildValue(edited)
  if (read.ok) return true
  const rules = new Set(brokenRulesOf(edited).map((rule) => `${rule.path} ${rule.code}`))
  return read.mistakes.every(
    (one) => rules.has(`${one.path} ${one.code}`) || (one.path === path && one.code === 'out-of-range'),
  )
}

function valuesOf({ from, to, steps }: SweepRequest, whole: boolean): number[] {
  const values = Array.from({ length: steps + 1 }, (_, step) => {
    const value = step === steps ? to : from + ((to - from) * step) / steps
    return whole ? Math.round(value) : Number(value.toPrecision(12))
  })
  return [...new Set(values)]
}

/** The build with one value after the other in the entry that is varied. */
export class SweepMachine {
  readonly #plan: SweepPlan
  readonly #build: Build
  readonly #machine = new SweptMachine()

  constructor(plan: SweepPlan) {
    this.#plan = plan
    this.#build = completeBuild(plan.stored)
  }

  // A complete build has the shape of a stored one: the same edit serves.
  readonly #with = (value: number) => withEntry(this.#build, this.#plan.path, value) as Build

  /** The machine at a value, or the rule that it breaks. */
  readonly pointAt = (value: number): SweepPoint => {
    const { measures } = this.#plan
    const machine = this.#machine
    const edited = this.#with(value)
    const [gap = null] = brokenRulesOf(edited)
    if (gap !== null) return { value, figures: measures.map(() => null), margin: null, worstLimit: null, gap }
    machine.set(edited)
    return {
      value,
      figures: measures.map((measure) => finiteOrNull(machine.valueOf(measure))),
      margin: finiteOrNull(machine.worst),
      worstLimit: machine.worstLimit,
      gap,
    }
  }

  /** Which limits are over at a value; null where it makes no build. */
  readonly overAt = (value: number) => {
    const edited = this.#with(value)
    return brokenRulesOf(edited).length > 0 ? null : this.#machine.overAt(edited)
  }
}

/** What the points of a sweep say together. */
export function sweepOfPoints(plan: SweepPlan, points: readonly SweepPoint[]): Sweep {
  const { stored, path, field, measures } = plan
  const machine = new SweepMachine(plan)
  const current = entryInForce(stored, path)
  return {
    path,
    label: entryLabelOf(path),
    field,
    measures,
    points,
    today: typeof current === 'number' ? machine.pointAt(current) : null,
    crossings: crossingsOf(points, field.whole === true, machine.overAt).map((crossing) => ({
      ...crossing,
      label: limitOf(crossing.id)?.label ?? crossing.id,
    })),
  }
}
