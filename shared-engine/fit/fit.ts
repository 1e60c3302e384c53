import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import type { FitAnswer } from './answer.ts'
import type { BlockName } from './entries.ts'
import { errorsOf } from './errors.ts'
import { conditionOf, noiseShareOf } from './identify.ts'
import { blockOf, entryOf, judgedEntry, markNotes, notesOf } from './judged.ts'
import { changesByLags } from './lag-changes.ts'
import { carriedToRest } from './late.ts'
import { inLoggedSegments, type FitLog } from './log.ts'
import { machinesOf } from './model.ts'
import { planOf } from './plan.ts'
import { preparedOf, type Prepared } from './prepare.ts'
import { ofGroups, ofNoise, refusedAlone } from './refuse.ts'
import { lagNote } from './sentences.ts'
import type { BlockState } from './solve.ts'

/**
 * Fits entries of a build to a log: only what the log tells is offered.
 *
 * @param asked paths of {@link fitEntryOf}, in the order in which they are to be answered
 * *Source:* robust least squares after P. J. Huber; errors by jackknife over pieces of ten seconds.
 */
export function fitOf(build: Build, log: FitLog, asked: readonly string[]): FitAnswer {
  return tracedFit(build, log, asked).answer
}

/** What a kind of residual was before the fit and is after it, each in standard deviations. */
export interface FitTrace {
  readonly block: BlockName
  /** Segment of each, from 0, and its time in it, s. */
  readonly segments: readonly number[]
  readonly seconds: readonly number[]
  readonly before: readonly number[]
  readonly after: readonly number[]
}

/** A fit with what is left of the log before and after it, for a plot. */
export interface TracedFit {
  readonly answer: FitAnswer
  readonly traces: readonly FitTrace[]
}

const traceOf = ({ block, residuals }: BlockState, before: Float64Array): FitTrace => ({
  block: block.name,
  segments: block.places.map(({ segment }) => segment),
  seconds: block.places.map(({ seconds }) => seconds),
  before: [...before],
  after: [...residuals],
})

/** {@link fitOf} with the residuals before and after. */
export function tracedFit(build: Build, log: FitLog, asked: readonly string[]): TracedFit {
  const logged = preparedOf(log, machineOf(build))
  const { plan, lags, carried, solvedFor } = carriedToRest(build, logged, asked)
  const { paths, refusals, solution } = carried
  const noise = Object.fromEntries([...logged.noise].map(([name, { sigma }]) => [name, sigma]))
  if (solution === null) {
    const entries = asked.map((path) =>
      entryOf(path, build, null, refusals.get(path) ?? refusedAlone(path, 'alone')),
    )
    const answer = {
      entries,
      fitted: [],
      correlation: [],
      condition: 1,
      blocks: [],
      noise,
      notes: [...markNotes(logged), ...lags.map(lagNote)],
    }
    return { answer, traces: [] }
  }
  const blocksIn = (one: Prepared) => planOf(build, one, solvedFor).blocks
  const fitted = machinesOf(plan.base, paths)(solution.values)
  const errors = errorsOf(solution, plan.base, paths, changesByLags(lags, logged, solution, fitted, blocksIn))
  const { condition, groups } = conditionOf(solution.columns)
  const named = groups.map((group) => group.map((at) => paths[at] ?? ''))
  const machines = machinesOf(plan.base, paths)
  const shares = paths.map((_, at) => noiseShareOf(solution, machines, at))
  const all = new Map([...ofNoise(paths, shares, errors), ...ofGroups(named), ...refusals])
  const entries = asked.map((path) => judgedEntry(path, build, paths, solution, errors, all))
  const answer = {
    entries,
    fitted: paths,
    correlation: errors.correlation,
    condition,
    blocks: solution.blocks.map((state) => blockOf(state, paths.length)),
    noise,
    notes: [...markNotes(logged), ...lags.map(lagNote), ...notesOf(solution, paths.length)],
  }
  const machine = machineOf(plan.base)
  const inLog = inLoggedSegments(log)
  return {
    answer,
    traces: solution.blocks.map((state) => inLog(traceOf(state, state.block.residualsOf(machine)))),
  }
}
