import type { LimitId } from '../limits/id.ts'
import type { TestId } from '../reference/measurements.ts'
import type { UncertainLimit, Uncertainty } from '../uncertainty/uncertainty.ts'
import { testsTelling } from './tells.ts'

/** A guided test worth taking next, and what it would do to a limit that is badly off. */
interface NextReading {
  readonly test: TestId
  /** Entry that it would tell better. */
  readonly path: string
  /** The worst limit of which a test tells something. */
  readonly limit: LimitId
  /** Width of its margin's band, 5th to 95th percentile, as things are. */
  readonly band: number
  /** The same with this entry known twice as well. */
  readonly bandIfHalved: number
}

/**
 * Which reading is worth taking next: guided tests by how much the band of the worst limit would shrink if its entry were
 * known twice as well, the most first; tests of entries that would not shrink it are left out. Where no test tells of the
 * worst limit, those of the next worst one.
 *
 * @param uncertainty its limits stand worst first
 * *Source:* one spread halved at a time, as in the uncertainty's own advice: engineering judgement, no source.
 */
export function nextReadings({ limits }: Pick<Uncertainty, 'limits'>): readonly NextReading[] {
  for (const limit of limits) {
    const found = readingsFor(limit)
    if (found.length > 0) return found
  }
  return []
}

function readingsFor({ id, influences }: UncertainLimit): readonly NextReading[] {
  return influences
    .flatMap(({ path, band, bandIfHalved }) =>
      band === null || bandIfHalved === null || bandIfHalved >= band
        ? []
        : testsTelling(path).map((test) => ({ test, path, limit: id, band, bandIfHalved })),
    )
    .sort((one, other) => one.bandIfHalved - other.bandIfHalved)
}
