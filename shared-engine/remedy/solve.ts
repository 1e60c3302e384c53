import { bracketedRoot } from '../numeric/root.ts'

/** Where to look for the least change of a number. */
interface ChangeSpan {
  /** Today's value. */
  readonly from: number
  /** The farthest value one way; either side of `from`. */
  readonly to: number
  /** Sizes that can be had are whole multiples of this. */
  readonly step: number
  /** Only whole numbers exist: teeth, cells. */
  readonly whole?: boolean
}

/** What came of looking one way. */
export interface ChangeFound {
  /** The least change that reaches the target, or else the best that there is. */
  readonly value: number
  readonly measure: number
  readonly reached: boolean
}

/** First step out, as a share of the way, and how the steps grow: about 14 looks to the far end. */
const firstShare = 1 / 256
const growth = 1.5

/**
 * The least change of a number, one way, that brings a measure to a target.
 *
 * Steps out from today's value, growing, until the measure reaches the target; the crossing in the last step is then a
 * bracketed root (`measure(x) = target`), rounded away from today's value to a size that can be had and measured again; for
 * whole numbers it is found by halving.
 * Where the measure passes its peak below the target, the peak is looked at more closely by golden section. A measure that
 * reaches the target and falls back within one step is missed.
 *
 * @param asked the measure; NaN where the number makes no build: the way ends there
 * @returns null where even the first step makes no build, and where nothing depends on the number
 */
export function leastChange(
  asked: (value: number) => number,
  target: number,
  span: ChangeSpan,
): ChangeFound | null {
  const measure = remembered(asked)
  const values = stepsOut(span)
  const measures: number[] = []
  for (const value of values) {
    const here = measure(value)
    if (Number.isNaN(here)) break
    measures.push(here)
    if (here >= target) break
  }
  const last = measures.length - 1
  if (last < 1) return null
  const crossing = span.whole === true ? wholeCrossing : rootCrossing
  if ((measures[last] ?? NaN) >= target) {
    return crossing(measure, target, span, values[last - 1] ?? span.from, values[last] ?? span.to)
  }
  // Most entries have nothing to do with the limit: there is no peak to look for.
  if (measures.every((one) => one === measures[0])) return null
  const best = measures.indexOf(Math.max(...measures.slice(1)), 1)
  const [left, right] = [values[best - 1] ?? span.from, values[Math.min(best + 1, last)] ?? span.to]
  const sized = span.whole === true ? (value: number) => measure(Math.round(value)) : measure
  const peak = roundedBest(measure, span, peakBetween(sized, left, right, span.step), values[best] ?? span.to)
  if (peak.measure < target) return peak
  return crossing(measure, target, span, values[best - 1] ?? span.from, peak.value)
}

/**
 * The same among sizes that are sold: the nearest that reaches the target, else the best of them.
 *
 * @param sizes nearest first; tried up to the first that makes no build
 * @returns null where none makes a build
 */
export function nextSize(
  measure: (value: number) => number,
  target: number,
  sizes: readonly number[],
): ChangeFound | null {
  let best: ChangeFound | null = null
  for (const value of sizes) {
    const here = measure(value)
    if (Number.isNaN(here)) break
    if (here >= target) return { value, measure: here, reached: true }
    if (best === null || here > best.measure) best = { value, measure: here, reached: false }
  }
  return best
}

/** Values from today's to the far end: whole steps where steps are few. */
function stepsOut({ from, to, step }: ChangeSpan): number[] {
  const whole = Math.abs(to - from)
  const sign = Math.sign(to - from)
  const values = [from]
  for (let share = firstShare; share < 1; share = share * growth + firstShare) {
    const value = roundedTo(from + sign * share * whole, step, sign)
    if (value !== values.at(-1) && sign * (to - value) > 0) values.push(value)
  }
  return to === from ? values : [...values, to]
}

/** To the next size that can be had, away from today's value; a hundred-thousandth of a step is the root's own error. */
function roundedTo(value: number, step: number, sign: number): number {
  const count = value / step
  const rounded = sign > 0 ? Math.ceil(count - 1e-5) : Math.floor(count + 1e-5)
  return Number((rounded * step).toPrecision(10))
}

/** Least whole number past the crossing between one that fails and one that reaches. */
function wholeCrossing(
  measure: (value: number) => number,
  target: number,
  _span: ChangeSpan,
  near: number,
  far: number,
): ChangeFound {
  let [fails, reaches] = [near, far]
  while (Math.abs(reaches - fails) > 1) {
    const middle = Math.trunc((fails + reaches) / 2)
    if (measure(middle) >= target) reaches = middle
    else fails = middle
  }
  const found = measure(reaches)
  return { value: reaches, measure: found, reached: found >= target }
}

function rootCrossing(
  measure: (value: number) => number,
  target: number,
  span: ChangeSpan,
  near: number,
  far: number,
): ChangeFound {
  const sign = Math.sign(span.to - span.from)
  // Margins that can't be formed are far below any target, but a number, so that the bracket can shrink over them.
  const excess = (value: number) => finiteOr(measure(value) - target, -1e6)
  const root = bracketedRoot(excess, near, far, { tolerance: span.step * 1e-6 }) ?? far
  const within = (value: number) => (sign > 0 ? Math.min(value, far) : Math.max(value, far))
  let value = within(roundedTo(root, span.step, sign))
  // A jump, or a root a hair short, can leave the rounded size just below: the next sizes are tried before the far end.
  for (let tries = 0; tries < 3 && value !== far && !(measure(value) >= target); tries += 1) {
    value = within(roundedTo(value + sign * span.step * 0.5, span.step, sign))
  }
  if (!(measure(value) >= target)) value = far
  return { value, measure: measure(value), reached: measure(value) >= target }
}

const finiteOr = (value: number, otherwise: number) => (Number.isFinite(value) ? value : otherwise)

/** Each measure is a whole evaluation of the build, and the same values are asked for again and again. */
function remembered(measure: (value: number) => number): (value: number) => number {
  const known = new Map<number, number>()
  return (value) => {
    const before = known.get(value)
    if (before !== undefined) return before
    const here = measure(value)
    known.set(value, here)
    return here
  }
}

/** Looks at most, and share of a size that can be had below which a peak is rounded all the same. */
const mostLooks = 25
const surelyRounded = 1e-3

/** Golden-section peak; NaN counts as lowest. */
function peakBetween(measure: (value: number) => number, left: number, right: number, step: number): number {
  const golden = (Math.sqrt(5) - 1) / 2
  const at = (value: number) => finiteOr(measure(value), -Infinity)
  let [low, high] = [left, right]
  let [first, second] = [high - golden * (high - low), low + golden * (high - low)]
  let [atFirst, atSecond] = [at(first), at(second)]
  for (let look = 1; look < mostLooks && Math.abs(high - low) > surelyRounded * step; look += 1) {
    // Of the two looks inside, the better one is an inner look of what remains too.
    if (atFirst < atSecond) {
      ;[low, first, atFirst] = [first, second, atSecond]
      second = low + golden * (high - low)
      atSecond = at(second)
    } else {
      ;[high, second, atSecond] = [second, first, atFirst]
      first = high - golden * (high - low)
      atFirst = at(first)
    }
  }
  return (low + high) / 2
}

function roundedBest(
  measure: (value: number) => number,
  span: ChangeSpan,
  peak: number,
  known: number,
): ChangeFound {
  const sizes = [known, roundedTo(peak, span.step, 1), roundedTo(peak, span.step, -1)]
  const sign = Math.sign(span.to - span.from)
  const allowed = sizes.filter((value) => sign * (value - span.from) > 0 && sign * (span.to - value) >= 0)
  // a number of so many digits that rounding puts every size behind it
  const tried = allowed.length > 0 ? allowed : [known]
  const found = tried.map((value) => ({ value, measure: measure(value), reached: false }))
  return found.reduce((best, one) => (one.measure > best.measure ? one : best))
}
