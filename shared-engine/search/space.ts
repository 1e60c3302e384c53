import { machineOf } from '../machine/machine.ts'
import { isDecisive } from '../limits/group.ts'
import { completeBuild } from '../entries/read.ts'
import type { StoredBuild } from '../entries/schema.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import type { CandidateChoice } from './candidate-build.ts'
import { axesOf, type SearchAxis } from './space-axes.ts'
import { boundHoldsOf, marginHoldsOf, type Hold } from './space-hold.ts'
import { measureOf, type Measure } from './space-measure.ts'
import { usualKept, type StoredMeasure, type StoredSpace } from './space-schema.ts'

/** A figure to have as much, or as little, of as can be. */
export interface Aim {
  readonly measure: Measure
  readonly best: 'most' | 'least'
}

/** A space on a build, ready to be searched. Candidates are numbered from 0; the last axis changes fastest. */
export interface SearchPlan {
  readonly stored: StoredBuild
  readonly axes: readonly SearchAxis[]
  readonly holds: readonly Hold[]
  /** One, or two for a Pareto front. */
  readonly aims: readonly Aim[]
  /** What the map of candidates is drawn over, across and up. */
  readonly map: readonly [Measure, Measure]
  readonly keep: number
  /** Whether anything of it asks what mishaps do: a limit held, a figure held, aimed for or drawn. */
  readonly mishaps: boolean
  /** Candidates in all. */
  readonly total: number
}

/** A search of more would take minutes; a builder's drawers never ask for it. */
const mostCandidates = 1_000_000_000

/**
 * A space on a build, or every mistake that keeps it from being searched.
 *
 * @param stored a build that was read
 * @param space a space that was read
 */
export function planOf(stored: StoredBuild, space: StoredSpace): Result<SearchPlan> {
  const mistakes: Mistake[] = []
  const axes = axesOf(stored, space, mistakes)
  const machine = machineOf(completeBuild(stored))
  const holds = [...marginHoldsOf(stored, machine, space, mistakes), ...boundHoldsOf(space, mistakes)]
  const aims = aimsOf(space, mistakes)
  const map = mapOf(space, aims, mistakes)
  const total = axes.reduce((product, axis) => product * axis.values.length, 1)
  if (Object.keys(space.vary).length === 0) {
    mistakes.push({
      code: 'missing',
      path: 'vary',
      value: '',
      allowed: 'at least one entry to vary',
      kept: '',
    })
  }
  if (total > mostCandidates) {
    const value = `${total.toLocaleString('en')} combinations`
    mistakes.push({ code: 'too-many', path: 'vary', value, allowed: 'at most 1,000,000,000', kept: '' })
  }
  if (mistakes.length > 0 || map === null) return failed(mistakes)
  const existing = aims.map(({ measure }): Hold => ({ type: 'exists', measure }))
  const held = [...holds, ...existing]
  const keep = space.keep ?? usualKept
  const mishaps = held.some(asksOfMishaps) || map.some(({ ofMishaps }) => ofMishaps)
  return succeeded({ stored, axes, holds: held, aims, map, keep, mishaps, total })
}

function asksOfMishaps(hold: Hold): boolean {
  return hold.type === 'margin' ? !isDecisive(hold.limit.group) : hold.measure.ofMishaps
}

function aimsOf(space: StoredSpace, mistakes: Mistake[]): Aim[] {
  const list = Array.isArray(space.aim) ? space.aim : [space.aim]
  return list.flatMap((stored, place) => {
    const measure = measureOf(stored, Array.isArray(space.aim) ? `aim.${place}` : 'aim')
    if (measure.ok) return [{ measure: measure.value, best: stored.best }]
    mistakes.push(...measure.mistakes)
    return []
  })
}

/** As the space says; else the two aims, or the one over top speed (over the ratio where top speed is the aim). */
function mapOf(space: StoredSpace, aims: readonly Aim[], mistakes: Mistake[]): SearchPlan['map'] | null {
  const [first, second] = aims
  if (first === undefined) return null
  const usual = first.measure.name === 'topSpeedMps' ? 'ratio' : 'topSpeedMps'
  const [across, up]: readonly StoredMeasure[] = space.map ?? []
  const one =
    across === undefined && second !== undefined
      ? first.measure
      : measureAt(across ?? { figure: usual }, 'map.0', mistakes)
  const other = up === undefined ? (second ?? first).measure : measureAt(up, 'map.1', mistakes)
  return one === null || other === null ? null : [one, other]
}

function measureAt(stored: StoredMeasure, path: string, mistakes: Mistake[]): Measure | null {
  const measure = measureOf(stored, path)
  if (measure.ok) return measure.value
  mistakes.push(...measure.mistakes)
  return null
}

/** The entries of a candidate, by its number. */
export function choicesOf(plan: SearchPlan, index: number): CandidateChoice[] {
  const choices: CandidateChoice[] = []
  let rest = index
  for (const { path, label, values, motors } of plan.axes.toReversed()) {
    const value = values[rest % values.length]
    rest = Math.floor(rest / values.length)
    if (value === undefined) throw new Error(`candidate ${index} is past the last`)
    choices.unshift({ path, label, value, motor: motors?.[value] ?? null })
  }
  return choices
}
