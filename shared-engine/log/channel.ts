import type { ChannelId } from '../reference/columns.ts'
import { mapped } from './mapped.ts'
import { lookedAt, medianOf } from './order-statistics.ts'
import type { Timeline } from './time/timeline.ts'

/** Channels that hold their last value until the next: what a driver or a controller sets in steps. */
const held: readonly ChannelId[] = ['throttle', 'duty']
/** Temperatures change slowly: an older sample still tells. */
export const temperatures: readonly ChannelId[] = ['motorC', 'controllerC', 'coolantC']

const rowsOfTimelines = new WeakMap<Timeline, Int32Array>()

/** All rows in order; never changed by whoever has it. */
function everyRow(timeline: Timeline): Int32Array {
  const known = rowsOfTimelines.get(timeline)
  if (known !== undefined) return known
  const rows = new Int32Array(timeline.count)
  for (let row = 0; row < rows.length; row += 1) rows[row] = row
  rowsOfTimelines.set(timeline, rows)
  return rows
}

/**
 * One channel of a log over its rows: NaN where a row has no sample.
 *
 * The value at a row without one lies on the line between the samples beside it, where both are near; else it is the
 * earlier, where that is young; never across segments. *Source:* assumption: linear between near samples.
 */
export class Channel {
  /** Rows with a sample, in order; filled by {@link index}. */
  samples: Int32Array = new Int32Array()
  /** Place in `samples` of the last sample up to each row; −1 before the first. */
  #place: Int32Array = new Int32Array()
  /** d, s: median step between samples; NaN with fewer than two. */
  step = NaN
  /** A, s: how old a sample may be to stand for a row. */
  reach = 1
  readonly #holds: boolean

  readonly id: ChannelId
  /** One for each row of the timeline, in the channel's unit. */
  readonly values: Float64Array
  readonly timeline: Timeline

  constructor(id: ChannelId, values: Float64Array, timeline: Timeline) {
    this.id = id
    this.values = values
    this.timeline = timeline
    this.#holds = held.includes(id)
  }

  /** Looks through the rows again, after samples were taken away. */
  index(): void {
    if (this.#isFull()) {
      // Every row has its sample: one list of all rows serves samples and places of every such channel.
      this.samples = this.#place = everyRow(this.timeline)
    } else this.#find()
    this.step = this.#medianStep()
    const least = temperatures.includes(this.id) ? 10 : 1
    this.reach = Math.max(least, Number.isNaN(this.step) ? 0 : 3 * this.step)
  }

  #isFull(): boolean {
    const { values } = this
    const { count } = this.timeline
    for (let row = 0; row < count; row += 1) if (!Number.isFinite(values[row])) return false
    return count > 0
  }

  #find(): void {
    const { values } = this
    const { count } = this.timeline
    const found = new Int32Array(count)
    const place = new Int32Array(count)
    let samples = 0
    for (let row = 0; row < count; row += 1) {
      if (Number.isFinite(values[row])) {
        found[samples] = row
        samples += 1
      }
      place[row] = samples - 1
    }
    this.samples = found.slice(0, samples)
    this.#place = place
  }

  #medianStep(): number {
    const { t, segmentOf } = this.timeline
    const steps: number[] = []
    const most = Math.min(this.samples.length, lookedAt)
    for (let place = 1; place < most; place += 1) {
      const row = this.samples[place] ?? 0
      const before = this.samples[place - 1] ?? 0
      if (segmentOf[row] === segmentOf[before]) steps.push((t[row] ?? NaN) - (t[before] ?? NaN))
    }
    return medianOf(steps)
  }

  /** Row of the last sample up to a row, in the same segment; −1 without one. */
  sampleBefore(row: number): number {
    const found = this.samples[this.#place[row] ?? -1]
    return found !== undefined && this.#together(found, row) ? found : -1
  }

  /** Row of the first sample after a row, in the same segment; −1 without one. */
  sampleAfter(row: number): number {
    const found = this.samples[(this.#place[row] ?? -1) + 1]
    return found !== undefined && this.#together(found, row) ? found : -1
  }

  #together(one: number, other: number): boolean {
    return this.timeline.segmentOf[one] === this.timeline.segmentOf[other]
  }

  /** The value at a row; NaN where no sample is near enough. */
  at(row: number): number {
    const own = this.values[row] ?? NaN
    if (Number.isFinite(own)) return own
    const { t } = this.timeline
    const before = this.sampleBefore(row)
    if (before < 0) return NaN
    const now = t[row] ?? NaN
    const begun = t[before] ?? NaN
    if (!(now - begun <= this.reach)) return NaN
    const earlier = this.values[before] ?? NaN
    const after = this.#holds ? -1 : this.sampleAfter(row)
    if (after < 0) return earlier
    const span = (t[after] ?? NaN) - begun
    if (!(span <= this.reach)) return earlier
    return earlier + (((this.values[after] ?? NaN) - earlier) * (now - begun)) / span
  }

  /**
   * The value at each of some rows; its own list, which is not to be changed, where that holds one for every row of the log
   * and all are asked for: of a long log a list of them is as long again.
   */
  along(rows: Int32Array): Float64Array {
    const { count } = this.timeline
    const isWhole = rows.length === count && this.samples.length === count
    return isWhole ? this.values : mapped(rows, (row) => this.at(row))
  }

  /** The first samples, which decide on steps and quanta. */
  first(most = lookedAt): Float64Array {
    return Float64Array.from(this.samples.subarray(0, most), (row) => this.values[row] ?? NaN)
  }

  /** Takes a sample away; {@link index} makes it known. */
  drop(row: number): void {
    this.values[row] = NaN
  }
}
