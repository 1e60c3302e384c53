/** What the margins of one limit say. */
interface MarginBand {
  readonly margin5: number | null
  readonly margin50: number | null
  readonly margin95: number | null
  readonly probabilityOver: number
  readonly present: number
}

/**
 * Percentiles of a limit's margins and how often it is over.
 *
 * @param margins NaN where the limit is left out, −Infinity where none can be formed
 * @param possible how many samples made a build at all
 * @returns null where the limit stands in no sample
 * *Source:* `docs/model.md` §§8 and 9.
 * @example marginBandOf(Float64Array.of(-0.5, 0, 0.5), 3)?.probabilityOver // 1/3
 */
export function marginBandOf(margins: Float64Array, possible: number): MarginBand | null {
  const sorted = margins.filter((margin) => !Number.isNaN(margin)).sort()
  if (sorted.length === 0) return null
  let over = 0
  while (over < sorted.length && (sorted[over] ?? 0) < 0) over += 1
  return {
    margin5: marginQuantile(sorted, 0.05),
    margin50: marginQuantile(sorted, 0.5),
    margin95: marginQuantile(sorted, 0.95),
    probabilityOver: over / possible,
    present: sorted.length / possible,
  }
}

/**
 * Quantile of margins, some of which may be −Infinity: linear between order statistics, definition 7 of Hyndman and Fan.
 *
 * @param sorted ascending
 * @returns null where it lies among margins that can't be formed
 */
function marginQuantile(sorted: Float64Array, p: number): number | null {
  const place = (sorted.length - 1) * p
  const below = Math.floor(place)
  const low = sorted[below] ?? NaN
  const share = place - below
  if (!Number.isFinite(low)) return null
  return share === 0 ? low : low + share * ((sorted[below + 1] ?? low) - low)
}

/** From the 5th to the 95th percentile; null where an end can't be formed or the limit is left out. */
export function bandWidthOf(margins: Float64Array): number | null {
  const sorted = margins.filter((margin) => !Number.isNaN(margin)).sort()
  if (sorted.length === 0) return null
  const [low, high] = [marginQuantile(sorted, 0.05), marginQuantile(sorted, 0.95)]
  return low === null || high === null ? null : high - low
}
