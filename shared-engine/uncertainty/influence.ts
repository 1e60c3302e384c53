import { correlationOf, ranksOf } from '../numeric/statistics.ts'
import { bandWidthOf } from './band.ts'
import type { Gathered } from './gather.ts'
import type { UncertaintyPlan } from './samples.ts'

/** What one toleranced entry does to one limit. */
export interface Influence {
  readonly path: string
  /** Spearman's rank correlation with the margin, −1 to 1; null where one of them does not vary. */
  readonly rankCorrelation: number | null
  /** Width of the margin's band, 5th to 95th percentile, as things are: over the samples done again. */
  readonly band: number | null
  /** The same with this entry's tolerance halved. */
  readonly bandIfHalved: number | null
}

/** Ranks of every entry over all samples, made once: sorting is what costs. */
const entryRanks = new WeakMap<Gathered, readonly Float64Array[]>()

function ranksOfEntries(plan: UncertaintyPlan, gathered: Gathered): readonly Float64Array[] {
  let ranks = entryRanks.get(gathered)
  if (ranks === undefined) {
    ranks = plan.entries.map((_, place) => ranksOf(gathered.base.valuesOf(place)))
    entryRanks.set(gathered, ranks)
  }
  return ranks
}

/** What each entry does to a limit, largest rank correlation first; ties by path. */
export function limitInfluences(plan: UncertaintyPlan, gathered: Gathered, limit: number): Influence[] {
  const margins = gathered.base.marginsOf(limit)
  const here = placesOfNumbers(margins)
  const everywhere = here.length === margins.length
  const marginRanks = ranksOf(everywhere ? margins : picked(margins, here))
  const ranks = everywhere
    ? ranksOfEntries(plan, gathered)
    : plan.entries.map((_, place) => ranksOf(picked(gathered.base.valuesOf(place), here)))
  const band = bandWidthOf(margins.subarray(0, plan.again))
  const influences = plan.entries.map(({ path }, place) => ({
    path,
    rankCorrelation: correlationOf(ranks[place] ?? [], marginRanks),
    band,
    bandIfHalved: bandWidthOf(gathered.halved[place]?.marginsOf(limit) ?? margins),
  }))
  const size = ({ rankCorrelation }: Influence) => Math.abs(rankCorrelation ?? 0)
  return influences.sort((one, other) => size(other) - size(one) || (one.path < other.path ? -1 : 1))
}

/** Places at which there is a number. */
function placesOfNumbers(column: Float64Array): number[] {
  const places: number[] = []
  for (let at = 0; at < column.length; at += 1) if (!Number.isNaN(column[at])) places.push(at)
  return places
}

function picked(column: Float64Array, samples: readonly number[]): Float64Array {
  return Float64Array.from(samples, (sample) => column[sample] ?? NaN)
}
