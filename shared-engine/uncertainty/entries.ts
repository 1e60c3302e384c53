import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build, EntryOrigin, Tolerance } from '../entries/schema.ts'
import { truncatedNormalQuantile } from '../numeric/normal.ts'
import { type Spread, spreadsOf } from './spreads.ts'

/** What an entry's spread is by: the tolerance entered with it, or else where the entry comes from. */
export type SpreadBy = 'tolerance' | EntryOrigin

/** An entry that is known only so well; numbers in its bench unit, as the build stores them. */
export interface TolerancedEntry {
  readonly path: string
  readonly label: string
  /** What the build says. */
  readonly nominal: number
  /** How far it may lie off, one way. */
  readonly plusMinus: number
  readonly shape: Tolerance['shape']
  readonly by: SpreadBy
  /** Range of the entry; what a draw puts outside is held to it. */
  readonly low: number
  readonly high: number
}

/** Entries whose spread takes part, and those whose tolerance does not. */
export interface TolerancedEntries {
  readonly entries: readonly TolerancedEntry[]
  /** Paths of whole numbers: teeth, cells and poles are counted, and a count is right or wrong, not vague. */
  readonly counted: readonly string[]
}

/**
 * The entries of a build that are known only so well, in the order of their paths so that the order in the file plays no
 * part.
 *
 * A tolerance in percent is one of the entry's own value. An entry without a tolerance spreads by where it comes from:
 * {@link spreadsOf}. Counts take no part and are named [our decision: half a tooth does not exist, and which count is right
 * is settled by counting, not by a band].
 */
export function tolerancedEntriesOf(build: Build): TolerancedEntries {
  const spreads = spreadsOf(build)
  const isCounted = (path: string) => fieldOf(path)?.whole === true
  const typed = Object.keys(build.tolerances)
  const paths = [...typed.filter((path) => !isCounted(path)), ...Object.keys(spreads)].sort()
  return {
    entries: paths.flatMap((path) => entryOf(build, path, spreads[path])),
    counted: typed.filter(isCounted).sort(),
  }
}

function entryOf(build: Build, path: string, spread: Spread | undefined): TolerancedEntry[] {
  const field = fieldOf(path)
  const nominal = valueAt(build, keysOf(path))
  // The build's rules let tolerances speak of numbers alone.
  if (field === undefined || typeof nominal !== 'number') return []
  const { label, low = -Infinity, high = Infinity } = field
  const known = { path, label, nominal, low, high }
  if (spread !== undefined) return [{ ...known, ...spread, by: build.origins[path] ?? 'tolerance' }]
  const tolerance = build.tolerances[path]
  if (tolerance === undefined) return []
  const { plusMinus, plusMinusPercent = 0, shape } = tolerance
  const width = plusMinus ?? (Math.abs(nominal) * plusMinusPercent) / 100
  return [{ ...known, plusMinus: width, shape, by: 'tolerance' }]
}

/** Two entries that hang on the same thing, how the ground holds on: where both spread, one draw serves both. */
const drawnTogether = ['ground.gripCoefficient', 'ground.turnFriction'] as const

/**
 * For each entry the entry, by its place, whose draw it takes: nearly always its own.
 *
 * *Source:* `docs/model.md` §9: grip and turn friction rise and fall together [assumption].
 */
export function drawsOf(entries: readonly TolerancedEntry[]): readonly number[] {
  const [grip, turn] = drawnTogether.map((path) => entries.findIndex((entry) => entry.path === path))
  return entries.map((_, place) => (place === turn && grip !== undefined && grip >= 0 ? grip : place))
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
