import type { LimitId } from '../limits/id.ts'
import type { TestId } from '../reference/measurements.ts'
import type { Uncertainty } from '../uncertainty/uncertainty.ts'
import { testsTelling } from './tells.ts'

/** A guided test worth taking next, and what it would do to the limit that is worst off. */
export interface NextReading {
  readonly test: TestId
  /** Entry that it would tell better. */
  readonly path: string
  /** Limit that is worst off. */
  readonly limit: LimitId
  /** Width of its margin's band, 5th to 95th percentile, as things are. */
  readonly band: number
  /** The same with this entry's tolerance halved. */
  readonly bandIfHalved: number
}

/**
 * Which reading is worth taking next: guided tests by how much the band of the worst limit would shrink if the tolerance
 * of their entry were halved, the most first; tests of entries that would not shrink it are left out.
 *
 * @param uncertainty of a build with tolerances; its first limit is the worst one
 * *Source:* one tolerance halved at a time, as in the uncertainty's own advice: engineering judgement, no source.
 */
export function nextReadings({ limits }: Pick<Uncertainty, 'limits'>): readonly NextReading[] {
  const worst = limits[0]
  if (worst === undefined) return []
  const found = worst.influences.flatMap(({ path, band, bandIfHalved }) =>
    band === null || bandIfHalved === null || bandIfHalved >= band
      ? []
      : testsTelling(path).map((test) => ({ test, path, limit: worst.id, band, bandIfHalved })),
  )
  return found.sort((one, other) => one.bandIfHalved - other.bandIfHalved)
}
