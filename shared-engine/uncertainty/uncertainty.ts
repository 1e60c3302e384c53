import { groupRankOf } from '../limits/table.ts'
import type { Build } from '../entries/schema.ts'
import { limitInfluences, type Influence } from './influence.ts'
import { gatherPieces, type Gathered } from './gather.ts'
import { marginBandOf } from './band.ts'
import {
  uncertaintyPieces,
  uncertaintyPlanOf,
  type UncertaintyFound,
  type UncertaintyOptions,
  type UncertaintyPlan,
} from './samples.ts'
import type { LimitId } from '../limits/id.ts'
import type { SpreadBy } from './entries.ts'

export type { Influence } from './influence.ts'

/** An entry that is known only so well, as it took part. */
interface UncertainEntry {
  readonly path: string
  readonly label: string
  /** In the entry's bench unit. */
  readonly nominal: number
  readonly plusMinus: number
  readonly shape: 'uniform' | 'normal'
  /** What its spread is by: its tolerance, or where it comes from. */
  readonly by: SpreadBy
  /** Draws held to the entry's range. */
  readonly held: number
}

/** How sure one limit is. */
export interface UncertainLimit {
  readonly id: LimitId
  /** Percentiles of the margin; null where none can be formed there: worse than any number. */
  readonly margin5: number | null
  readonly margin50: number | null
  readonly margin95: number | null
  /** Share of all samples in which the limit is over. */
  readonly probabilityOver: number
  /** Share of all samples in which the limit stands in the ledger; without a top speed some do not. */
  readonly present: number
  /** Largest rank correlation first, by its size. */
  readonly influences: readonly Influence[]
  /** Path of the entry whose tolerance, halved, would shrink the band most; null where none would. */
  readonly measureFirst: string | null
}

/** How sure a build's limits are, given how well its entries are known. */
export interface Uncertainty {
  readonly name: string
  /** Samples that the result rests on: those that were in where the work was stopped. */
  readonly samples: number
  readonly seed: number
  /** Samples left out because their entries, taken together, make no build. */
  readonly impossible: number
  readonly entries: readonly UncertainEntry[]
  /** Paths of counts, whose tolerances take no part. */
  readonly counted: readonly string[]
  /** Share of the samples in which any limit is over. */
  readonly probabilityAnyOver: number
  /** The limit with the lowest 5th percentile stands first. */
  readonly limits: readonly UncertainLimit[]
}

/** Used where nothing else is said. */
export const standardUncertainty: UncertaintyOptions = { samples: 10_000, seed: 1 }

/**
 * How sure the limits of a build are: each entry that is known only so well, by its tolerance or by where it comes from, is
 * drawn from its distribution, by a Latin hypercube, and the build checked for every draw.
 *
 * For each limit: 5th, 50th and 95th percentile of the margin (definition 7 of Hyndman and Fan), the probability of being
 * over, Spearman's rank correlation of each entry with the margin, and the margin's band (95th less 5th percentile) when
 * that entry's tolerance is halved, worked out again on the same draws. A margin that can't be formed counts as over and
 * as lower than any other. Entries are drawn independently of each other [assumption], but for grip and turn friction, which
 * share one draw.
 *
 * @param build with its `tolerances` and `origins`
 * @param options samples and seed: the same ones give the same result, however the work was cut into pieces
 * *Source:* `docs/model.md` §9; McKay, Beckman and Conover (1979) for the sampling.
 */
export function uncertaintyOf(build: Build, options: Partial<UncertaintyOptions> = {}): Uncertainty {
  const plan = uncertaintyPlanOf(build, { ...standardUncertainty, ...options })
  return uncertaintyOfPieces(plan, uncertaintyPieces(plan, plan.samples).map(plan.run))
}

/** Puts the pieces together, in whatever order and by whatever threads they were done. */
export function uncertaintyOfPieces(plan: UncertaintyPlan, pieces: readonly UncertaintyFound[]): Uncertainty {
  const gathered = gatherPieces(plan, pieces)
  const limits = plan.limitIds.flatMap((id, place) => uncertainLimit(plan, gathered, id, place))
  const rank = (limit: UncertainLimit) => limit.margin5 ?? -Infinity
  limits.sort((one, other) => {
    const ahead = groupRankOf(one.id) - groupRankOf(other.id)
    if (ahead !== 0) return ahead
    const [first, second] = [rank(one), rank(other)]
    if (first !== second) return first < second ? -1 : 1
    return one.id < other.id ? -1 : 1
  })
  return {
    name: plan.build.name,
    samples: plan.entries.length === 0 ? 1 : gathered.samples,
    seed: plan.seed,
    impossible: gathered.impossible,
    entries: plan.entries.map(({ path, label, nominal, plusMinus, shape, by }, place) => ({
      path,
      label,
      nominal,
      plusMinus,
      shape,
      by,
      held: gathered.held[place] ?? 0,
    })),
    counted: plan.counted,
    probabilityAnyOver: gathered.probabilityAnyOver,
    limits,
  }
}

function uncertainLimit(
  plan: UncertaintyPlan,
  gathered: Gathered,
  id: LimitId,
  place: number,
): UncertainLimit[] {
  const band = marginBandOf(gathered.base.marginsOf(place), gathered.possible)
  if (band === null) return []
  const influences = limitInfluences(plan, gathered, place)
  const halved = influences.filter(({ bandIfHalved }) => bandIfHalved !== null)
  const first = halved.reduce<Influence | null>(
    (best, one) => (best === null || (one.bandIfHalved ?? 0) < (best.bandIfHalved ?? 0) ? one : best),
    null,
  )
  const shrinks = first !== null && (first.bandIfHalved ?? 0) < (first.band ?? 0)
  return [
    {
      id,
      margin5: band.margin5,
      margin50: band.margin50,
      margin95: band.margin95,
      probabilityOver: band.probabilityOver,
      present: band.present,
      influences,
      measureFirst: shrinks ? first.path : null,
    },
  ]
}
