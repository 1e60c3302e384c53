import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import { sumOfSquares } from '../numeric/linear-fit.ts'
import type { Block } from './blocks/block.ts'
import { blocksOf, missingBecause } from './choose.ts'
import { fitEntryOf, type BlockName, type FitEntry, type Tell } from './entries.ts'
import { errorsOf, lagOneOf, type Errors } from './errors.ts'
import { conditionOf, noiseShareOf } from './identify.ts'
import { inLoggedSegments, type ChannelName, type FitLog } from './log.ts'
import { movingInAir } from './marked.ts'
import { machinesOf } from './model.ts'
import { preparedOf, type Prepared } from './prepare.ts'
import { ofGroups, ofNoise, ofValue, refusedAlone, type Refusal, type RefusalCode } from './refuse.ts'
import { runsZOf } from './runs-test.ts'
import { changesByLags, latenessOfHeat } from './lag-changes.ts'
import { lagsOf, withoutLags, type Lag } from './lags.ts'
import { lagNote, markedNote, missesNote, spinNote, type FitNote } from './sentences.ts'
import { solved, columnsAtStart, type BlockState, type Solved } from './solve.ts'

/** An entry of a fit: offered with its error, or refused with the reason. */
export interface FittedEntry {
  readonly path: string
  readonly unit: string
  /** What the build has; null where it has nothing. */
  readonly build: number | null
  readonly value: number | null
  readonly standardError: number | null
  /** Part of the standard error that comes from the tolerances of what was held. */
  readonly fromTolerances: number | null
  readonly degreesOfFreedom: number | null
  readonly plusMinus: number | null
  readonly verdict: 'told' | 'rough' | 'refused'
  readonly code?: RefusalCode
  readonly with?: readonly string[]
  readonly tell?: Tell
}

/** How well one kind of residual agrees with the model. */
export interface FittedBlock {
  readonly name: BlockName
  readonly rows: number
  readonly pieces: number
  /** Reduced, before weights. */
  readonly chiSquared: number
  readonly scale: number
  readonly runsZ: number
  readonly lagOne: number
  readonly downweighted: number
}

/** What came of fitting a build to a log. */
export interface FitAnswer {
  readonly entries: readonly FittedEntry[]
  /** Paths that were solved for, in the order of `correlation`. */
  readonly fitted: readonly string[]
  readonly correlation: readonly (readonly number[])[]
  readonly condition: number
  readonly blocks: readonly FittedBlock[]
  /** σ of channels. */
  readonly noise: Readonly<Partial<Record<ChannelName, number>>>
  readonly notes: readonly FitNote[]
}

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

function planOf(build: Build, prepared: Prepared, asked: readonly string[]): Plan {
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
function carriedOut(plan: Plan, starts: (path: string) => number): Carried {
  const refusals = new Map(plan.refusals)
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

/** s of lag that the search for the temperature's begins from. */
const lagStarts = [0, 5, 10, 20, 40, 80]
const mostLagRounds = 5

const carriedAt = (build: Build, prepared: Prepared, asked: readonly string[]) => {
  const plan = planOf(build, prepared, asked)
  const carried = carriedOut(plan, (path) => {
    const entry = fitEntryOf(path)
    return entry === undefined ? 1 : startOf(plan.base, entry)
  })
  return { plan, carried }
}

/** How well the temperature is met with a lag taken out: the scale of what is left; infinite where it is not met at all. */
function leftOfHeat(build: Build, logged: Prepared, asked: readonly string[], seconds: number): number {
  const moved = withoutLags(logged, [{ channel: 'motorCelsius', seconds, standardError: 0 }])
  const states = carriedAt(build, moved, asked).carried.solution?.blocks ?? []
  return states.find(({ block }) => block.name === 'heat')?.scale ?? Infinity
}

/** A plan carried through with what comes late taken out: currents first, then the temperature until it comes to rest. */
function carriedWithLags(build: Build, logged: Prepared, asked: readonly string[]) {
  const currents: readonly Lag[] = lagsOf(logged, machineOf(build), build.pack.chemistry)
  const plain = { lags: currents, ...carriedAt(build, withoutLags(logged, currents), asked) }
  const heat = plain.carried.solution?.blocks.find(({ block }) => block.name === 'heat')
  if (heat === undefined || blockOf(heat, plain.carried.paths.length).chiSquared < worthALook) return plain
  const lump = asked.filter((path) => fitEntryOf(path)?.block === 'heat')
  const left = lagStarts.map((seconds) => leftOfHeat(build, withoutLags(logged, currents), lump, seconds))
  let known = lagStarts[left.indexOf(Math.min(...left))] ?? 0
  for (let round = 0; round < mostLagRounds; round += 1) {
    const withHeat = (seconds: number, standardError = 0): readonly Lag[] => [
      ...currents,
      { channel: 'motorCelsius', seconds, standardError },
    ]
    const { plan, carried } = carriedAt(build, withoutLags(logged, withHeat(known)), asked)
    if (carried.solution === null) return plain
    const machine = machinesOf(plan.base, carried.paths)(carried.solution.values)
    const found = latenessOfHeat(
      carried.solution,
      machine,
      known,
      (seconds) => planOf(build, withoutLags(logged, withHeat(seconds)), asked).blocks,
    )
    if (found === null) return plain
    if (found.settled) return { plan, carried, lags: withHeat(known, found.standardError) }
    known = found.seconds
  }
  return plain
}

const isOfHeat = (path: string) => fitEntryOf(path)?.block === 'heat'

/**
 * As {@link carriedWithLags}, but for a temperature that finds no rest: its entries are left as they are, and the others
 * solved for alone, which hang on it by the warmth of the winding only.
 */
function carriedToRest(build: Build, logged: Prepared, asked: readonly string[]) {
  const whole = { ...carriedWithLags(build, logged, asked), solvedFor: asked }
  const others = asked.filter((path) => !isOfHeat(path))
  if (whole.carried.solution?.settled !== false || others.length === asked.length || others.length === 0)
    return whole
  const rest = { ...carriedWithLags(build, logged, others), solvedFor: others }
  if (rest.carried.solution?.settled !== true) return whole
  const restless = asked.filter(isOfHeat).map((path) => [path, refusedAlone(path, 'unsettled')] as const)
  const refusals = new Map([...rest.carried.refusals, ...restless, ...whole.plan.refusals])
  return { ...rest, carried: { ...rest.carried, refusals } }
}

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

function judgedEntry(
  path: string,
  build: Build,
  paths: readonly string[],
  solution: Solved,
  errors: Errors,
  refusals: ReadonlyMap<string, Refusal>,
): FittedEntry {
  const at = paths.indexOf(path)
  const value = solution.values[at] ?? NaN
  const own = valueAt(build, keysOf(path))
  const refusal =
    refusals.get(path) ??
    ofValue(at, paths, value, typeof own === 'number' ? own : 0, errors) ??
    (solution.settled ? null : refusedAlone(path, 'unsettled'))
  return entryOf(path, build, { value, errors, at }, refusal)
}

function entryOf(
  path: string,
  build: Build,
  found: { readonly value: number; readonly errors: Errors; readonly at: number } | null,
  refusal: Refusal | null,
): FittedEntry {
  const own = valueAt(build, keysOf(path))
  const head = { path, unit: fitEntryOf(path)?.unit ?? '', build: typeof own === 'number' ? own : null }
  if (refusal !== null || found === null) {
    const none = {
      value: null,
      standardError: null,
      fromTolerances: null,
      degreesOfFreedom: null,
      plusMinus: null,
    }
    return { ...head, ...none, verdict: 'refused', ...(refusal ?? refusedAlone(path, 'alone')) }
  }
  const { value, errors, at } = found
  const plusMinus = errors.plusMinus[at] ?? NaN
  const size = Math.max(Math.abs(value), Math.abs(head.build ?? 0))
  return {
    ...head,
    value,
    standardError: errors.standardErrors[at] ?? NaN,
    fromTolerances: errors.fromTolerances[at] ?? NaN,
    degreesOfFreedom: errors.degreesOfFreedom[at] ?? NaN,
    plusMinus,
    verdict: plusMinus > size / 5 ? 'rough' : 'told',
  }
}

function blockOf({ block, residuals, scale, weights }: BlockState, entries: number): FittedBlock {
  const squares = residuals.reduce((sum, value) => sum + value * value, 0)
  return {
    name: block.name,
    rows: residuals.length,
    pieces: new Set(block.clusters).size,
    chiSquared: squares / Math.max(1, residuals.length - entries - block.offsets),
    scale,
    runsZ: runsZOf(residuals),
    lagOne: lagOneOf(residuals, block.clusters),
    downweighted: weights.filter((weight) => weight < 1).length,
  }
}

/** Past these a block's residuals are no noise. */
const mostChiSquared = 4
/** Past this a temperature may come late. */
const worthALook = 2
const leastRunsZ = -4

function markNotes(logged: Prepared): readonly FitNote[] {
  const parts = movingInAir(logged)
  return parts.length === 0 ? [] : [markedNote(parts)]
}

function notesOf({ blocks }: Solved, entries: number): readonly FitNote[] {
  const spun = blocks.reduce((sum, { block }) => sum + block.spun, 0)
  const missed = blocks
    .map((state) => blockOf(state, entries))
    .filter(({ chiSquared, runsZ }) => chiSquared > mostChiSquared || runsZ < leastRunsZ)
  return [...(spun > 0 ? [spinNote(spun)] : []), ...missed.map(({ name }) => missesNote(name))]
}
