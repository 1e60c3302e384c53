import { extremeIn } from './extremes.ts'
import { firstFrom } from './first-from.ts'
import type { LogSeries } from './series.ts'

/** A part of a segment that is looked at, s. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** What a screen can show of a series. */
export interface ShownSeries {
  /** s, rising. */
  readonly seconds: readonly number[]
  /** Null where two samples are not joined. */
  readonly values: readonly (number | null)[]
  /** Between what the value lies, where only that is known; at moments of its own. */
  readonly band: {
    readonly seconds: readonly number[]
    readonly low: readonly (number | null)[]
    readonly high: readonly (number | null)[]
  } | null
}

interface Edges {
  readonly key: string
  readonly places: readonly number[]
}

/** Most series of a log have their moments in common. */
const lastEdges = new WeakMap<Float64Array, Edges>()

/**
 * Places at which the columns of a screen begin, and where the last one ends. Columns stand at multiples of their width, so
 * that a log that is moved along does not flicker.
 */
function edgesOf(seconds: Float64Array, { from, to }: Span, columns: number): readonly number[] {
  const key = `${from} ${to} ${columns}`
  const known = lastEdges.get(seconds)
  if (known?.key === key) return known.places
  const width = (to - from) / columns
  const first = Math.floor(from / width)
  const places = [firstFrom(seconds, from)]
  for (let column = 1; column <= columns; column += 1)
    places.push(firstFrom(seconds, Math.min(to, (first + column) * width), places.at(-1)))
  places.push(firstFrom(seconds, to, places.at(-1)))
  lastEdges.set(seconds, { key, places })
  return places
}

/** Takes what is shown of a series, column by column. */
class Shown {
  readonly seconds: number[] = []
  readonly values: (number | null)[] = []
  readonly band: ShownSeries['band'] & {
    readonly seconds: number[]
    readonly low: (number | null)[]
    readonly high: (number | null)[]
  } = { seconds: [], low: [], high: [] }
  readonly #series: LogSeries

  constructor(series: LogSeries) {
    this.#series = series
  }

  /** A sample as it is, or the place where two are parted. */
  point(place: number): void {
    const value = this.#series.values[place] ?? NaN
    const known = !Number.isNaN(value)
    this.seconds.push(this.#series.seconds[place] ?? 0)
    this.values.push(known ? value : null)
    this.#bandOf(place, known ? place : -1, known ? place : -1)
  }

  /** Samples of one column between which nothing is parted: two of them, the least and the greatest. */
  piece(from: number, to: number): void {
    if (to - from <= 2) {
      for (let place = from; place < to; place += 1) this.point(place)
      return
    }
    const { seconds, values, least, greatest, range } = this.#series
    const low = extremeIn(values, least, -1, from, to)
    const high = extremeIn(values, greatest, 1, from, to)
    if (low < 0 || high < 0) return
    for (const place of low === high ? [low] : [Math.min(low, high), Math.max(low, high)]) {
      this.seconds.push(seconds[place] ?? 0)
      this.values.push(values[place] ?? null)
    }
    this.#bandOf(
      from,
      range === null ? low : extremeIn(range.low, range.least, -1, from, to),
      range === null ? high : extremeIn(range.high, range.greatest, 1, from, to),
    )
  }

  #bandOf(at: number, least: number, greatest: number): void {
    const { seconds, values, range, within } = this.#series
    if (range === null && within === 0) return
    const known = least >= 0 && greatest >= 0
    const low = (range?.low ?? values)[least] ?? NaN
    const high = (range?.high ?? values)[greatest] ?? NaN
    this.band.seconds.push(seconds[at] ?? 0)
    this.band.low.push(known ? (range === null ? Math.max(0, low - within) : low) : null)
    this.band.high.push(known ? high + (range === null ? within : 0) : null)
  }
}

/**
 * What a screen shows of a series: in each of its columns the least and the greatest, so that no peak is lost and a gap
 * stays a gap; as it is where there is room for every sample. A sample either side of the span is added, so that lines reach
 * its edges.
 *
 * @param columns of the screen, px
 */
export function shownOf(series: LogSeries, span: Span, columns: number): ShownSeries {
  const { seconds, gaps } = series
  const edges = edgesOf(seconds, span, columns)
  const shown = new Shown(series)
  const first = edges[0] ?? 0
  const end = edges.at(-1) ?? 0
  if (first > 0) shown.point(first - 1)
  let gap = firstFrom(gaps, first)
  for (let column = 0; column + 1 < edges.length; column += 1) {
    let from = edges[column] ?? 0
    const to = edges[column + 1] ?? 0
    const parts = firstFrom(gaps, to, gap)
    // What lies between the first and the last gap of one column is narrower than a line.
    for (const at of parts - gap > 1 ? [gap, parts - 1] : parts > gap ? [gap] : []) {
      const place = gaps[at] ?? 0
      shown.piece(from, place)
      shown.point(place)
      from = place + 1
    }
    shown.piece(from, to)
    gap = parts
  }
  if (end < seconds.length) shown.point(end)
  return {
    seconds: shown.seconds,
    values: shown.values,
    band: shown.band.seconds.length > 0 ? shown.band : null,
  }
}
