import { lookedAt, medianPositiveStep } from '../order-statistics.ts'
import type { Repairs } from '../repairs.ts'
import type { Grid } from '../text/grid.ts'
import type { LogTimeForm } from './stamps.ts'
import type { TimedRows } from './spread.ts'

/** A stretch of rows whose times follow each other: from row `first` to row `end` − 1. */
interface Segment {
  readonly first: number
  readonly end: number
}

/** The rows that were kept, in order, with their times. */
export interface Timeline {
  readonly count: number
  /** Line of the file of each row. */
  readonly lines: Float64Array
  /** s since the first row of the row's segment. */
  readonly t: Float64Array
  readonly segments: readonly Segment[]
  /** Number of each row's segment, from 0. */
  readonly segmentOf: Int32Array
  /** m′, s: median step above zero; NaN without one. */
  readonly step: number
  /** s of the first row as the log has it: since 1970 where it has dates. */
  readonly start: number
  /** Rows that follow a step longer than a gap. */
  readonly gaps: readonly number[]
}

const day = 86_400
/** s without a row after which a log counts as begun anew. *Source:* common practice, no source. */
const longestGap = 600

type WalkCode = 'midnight' | 'repeated-time' | 'backward-time' | 'reset' | 'pause'

/** What is done with a row. */
type Verdict = 'keep' | 'drop' | 'segment'

/** Goes through stamps in order and decides row by row what is kept, and where a new segment begins. */
class Walk {
  /** Days that a clock has gone round, in s. */
  #turned = 0
  readonly #isClock: boolean
  readonly #longest: number

  readonly #seconds: Float64Array
  readonly #count: number
  readonly #note: (code: WalkCode, place: number) => void

  constructor(
    { seconds, count, step }: TimedRows,
    form: LogTimeForm,
    note: (code: WalkCode, place: number) => void,
  ) {
    this.#seconds = seconds
    this.#count = count
    this.#note = note
    this.#isClock = form === 'clock'
    this.#longest = Math.max(Number.isNaN(step) ? 0 : 5 * step, 2)
  }

  /** The time of a row, its clock's turns counted. */
  at(place: number): number {
    return (this.#seconds[place] ?? NaN) + this.#turned
  }

  /** @param last the time of the last kept row */
  judge(place: number, last: number): Verdict {
    let now = this.at(place)
    if (this.#turnsRound(now, last)) {
      this.#turned += day
      now += day
      this.#note('midnight', place)
    }
    if (now === last) return this.#drop('repeated-time', place)
    let next = place + 1 < this.#count ? this.at(place + 1) : NaN
    if (this.#turnsRound(next, last)) next += day
    if (now < last) return next >= last ? this.#drop('backward-time', place) : this.#begin('reset', place)
    if (now - last <= this.#longest) return 'keep'
    if (next >= last && next < now) return this.#drop('backward-time', place)
    return now - last > longestGap ? this.#begin('pause', place) : 'keep'
  }

  #turnsRound(now: number, last: number): boolean {
    return this.#isClock && last - now > day / 2 && now + day - last <= longestGap
  }

  #drop(code: 'repeated-time' | 'backward-time', place: number): Verdict {
    this.#note(code, place)
    return 'drop'
  }

  #begin(code: 'reset' | 'pause', place: number): Verdict {
    this.#note(code, place)
    return 'segment'
  }
}

/**
 * Puts rows in order of time: what repeats or goes back is left out, what begins anew is a segment of its own.
 *
 * What stays is written where the rows, stamps and line numbers stood: a kept row is never behind its place in the file.
 *
 * @param grid gives its line numbers away
 * @param timed rows with their stamps, its first `count` rows are afterwards those that stay; its stamps are given away
 * *Source:* the thresholds, five steps, two seconds and ten minutes: common practice, no source.
 */
export function timelineOf(grid: Grid, timed: TimedRows, form: LogTimeForm, repairs: Repairs): Timeline {
  const { rows, seconds } = timed
  const lineOf = (place: number) => grid.lines[rows[place] ?? 0] ?? 0
  const walk = new Walk(timed, form, (code, place) => repairs.add(code, 'time', lineOf(place)))
  const breaks = [...grid.breaks]
  const starts: number[] = []
  const start = seconds[0] ?? NaN
  const [t, lines] = [seconds, grid.lines]
  let count = 0
  let last = NaN
  let origin = NaN
  for (let place = 0; place < timed.count; place += 1) {
    const row = rows[place] ?? 0
    const headed = breaks.length > 0 && row >= (breaks[0] ?? Infinity)
    const verdict: Verdict = count === 0 || headed ? 'segment' : walk.judge(place, last)
    if (verdict === 'drop') continue
    while (breaks.length > 0 && row >= (breaks[0] ?? Infinity)) breaks.shift()
    last = walk.at(place)
    if (verdict === 'segment') {
      starts.push(count)
      origin = last
    }
    lines[count] = lineOf(place)
    rows[count] = row
    t[count] = last - origin
    count += 1
  }
  return finished(t.subarray(0, count), lines.subarray(0, count), starts, start, repairs)
}

function finished(
  t: Float64Array,
  lines: Float64Array,
  starts: readonly number[],
  start: number,
  repairs: Repairs,
): Timeline {
  const count = t.length
  const segments = starts.map((first, place) => ({ first, end: starts[place + 1] ?? count }))
  const segmentOf = new Int32Array(count)
  segments.forEach(({ first, end }, place) => segmentOf.fill(place, first, end))
  const step = medianPositiveStep(t.subarray(0, Math.min(count, lookedAt)))
  const longest = Math.max(Number.isNaN(step) ? 0 : 5 * step, 2)
  const gaps: number[] = []
  for (let row = 1; row < count; row += 1) {
    if (segmentOf[row] !== segmentOf[row - 1] || !((t[row] ?? 0) - (t[row - 1] ?? 0) > longest)) continue
    gaps.push(row)
    repairs.add('gap', 'time', lines[row] ?? 0)
  }
  return { count, lines, t, segments, segmentOf, step, start, gaps }
}
