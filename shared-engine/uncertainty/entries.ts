import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build, Tolerance } from '../entries/schema.ts'
import { truncatedNormalQuantile } from '../numeric/normal.ts'

/** An entry that is known only to within a tolerance; numbers in its bench unit, as the build stores them. */
export interface TolerancedEntry {
  readonly path: string
  readonly label: string
  /** What the build says. */
  readonly nominal: number
  /** The tolerance, one way. */
  readonly plusMinus: number
  readonly shape: Tolerance['shape']
  /** Range of the entry; what a draw puts outside is held to it. */
  readonly low: number
  readonly high: number
}

/** Entries with a tolerance that takes part, and those whose tolerance does not. */
export interface TolerancedEntries {
  readonly entries: readonly TolerancedEntry[]
  /** Paths of whole numbers: teeth, cells and poles are counted, and a count is right or wrong, not vague. */
  readonly counted: readonly string[]
}

/**
 * The toleranced entries of a build, in the order of their paths so that the order in the file plays no part.
 *
 * A tolerance in percent is one of the entry's own value. Counts take no part and are named [our decision: half a tooth
 * does not exist, and which count is right is settled by counting, not by a band].
 */
export function tolerancedEntriesOf(build: Build): TolerancedEntries {
  const paths = Object.keys(build.tolerances).sort()
  const isCounted = (path: string) => fieldOf(path)?.whole === true
  return {
    entries: paths.filter((path) => !isCounted(path)).flatMap((path) => entryOf(build, path)),
    counted: paths.filter(isCounted),
  }
}

function entryOf(build: Build, path: string): TolerancedEntry[] {
  const field = fieldOf(path)
  const nominal = valueAt(build, keysOf(path))
  const tolerance = build.tolerances[path]
  // The build's rules let tolerances speak of numbers alone.
  if (field === undefined || tolerance === undefined || typeof nominal !== 'number') return []
  const { plusMinus, plusMinusPercent = 0, shape } = tolerance
  const { label, low = -Infinity, high = Infinity } = field
  const width = plusMinus ?? (Math.abs(nominal) * plusMinusPercent) / 100
  return [{ path, label, nominal, plusMinus: width, shape, low, high }]
}

/**
 * Value of an entry at a place of its distribution, before it is held to its range.
 *
 * uniform: x = n + w (2u − 1);  normal: x = n + (w/2) z(u), z the normal quantile cut off at ±3.
 *
 * @param entry n its value, w its tolerance
 * @param u 0 to 1
 * @param share of the tolerance that is left: 1, or ½ where it was measured better
 * @returns in the entry's bench unit
 * *Source:* `docs/model.md` §9: a normal tolerance is two standard deviations.
 * @example drawOf({ nominal: 10, plusMinus: 2, shape: 'uniform' }, 0.75, 1) // 11
 */
export function drawOf(
  { nominal, plusMinus, shape }: Pick<TolerancedEntry, 'nominal' | 'plusMinus' | 'shape'>,
  u: number,
  share: number,
): number {
  const width = plusMinus * share
  return shape === 'uniform'
    ? nominal + width * (2 * u - 1)
    : nominal + (width / 2) * truncatedNormalQuantile(u)
}
