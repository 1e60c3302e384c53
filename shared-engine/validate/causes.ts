import { fieldOf } from '../entries/fields.ts'
import { medianOf } from '../fit/noise.ts'
import type { OwnResponse, PredictedSeries } from './judge.ts'

/** An entry that would take away most of the error. */
export interface Explanation {
  readonly path: string
  /** By how much it would have to change, bench unit. */
  readonly change: number
  /** Part of the squared error that goes with it, 0 to 1. */
  readonly share: number
}

const isPossible = (path: string, value: number) => {
  const { low = -Infinity, high = Infinity } = fieldOf(path) ?? {}
  return value >= low && value <= high
}

/** Least part of the squared error that an entry has to explain, and the part of the best one's that others have to. */
const leastShare = 0.3
const nearlyBest = 0.8
const mostNamed = 3

/** Six times the middle of sizes: what is larger is left out of a search for a cause. */
const farFrom = (values: Float64Array) => 6 * medianOf(values.filter((value) => value !== 0).map(Math.abs))

/** Sums of a least-squares line through nothing. */
interface Sums {
  readonly along: number
  readonly length: number
  readonly whole: number
}

/** Sums of one entry and one quantity, in the quantity's usual band. */
function sumsOf({ measured, predicted, band }: PredictedSeries, change: Float64Array): Sums {
  const error = measured.map((value, at) => value - (predicted[at] ?? NaN))
  const [usual, most, scale] = [farFrom(error), farFrom(change), medianOf(band)]
  let [along, length, whole] = [0, 0, 0]
  error.forEach((one, at) => {
    const moved = change[at] ?? 0
    // A start or a stop that falls on another sample would outweigh all the rest.
    if (Math.abs(one) > usual || Math.abs(moved) > most) return
    along += one * moved
    length += moved * moved
    whole += one * one
  })
  // Each quantity counts alike, however many samples it has.
  const by = 1 / (scale * scale * Math.max(1, error.length))
  return { along: along * by, length: length * by, whole: whole * by }
}

/**
 * Entries of which one alone would take away most of the error of all quantities together, the most telling first: what
 * would mend the current and spoil the speed is none.
 */
export function explanationsOf(series: readonly PredictedSeries[]): readonly Explanation[] {
  const entries: readonly OwnResponse[] =
    series[0] === undefined ? [] : [...series[0].responses, ...series[0].tried]
  const found = entries.map(({ path, step, value }, entry) => {
    const sums = series.map((one) => {
      const change = [...one.responses, ...one.tried][entry]?.change ?? new Float64Array()
      return sumsOf(one, change)
    })
    const total = (key: keyof Sums) => sums.reduce((sum, one) => sum + one[key], 0)
    const steps = total('along') / total('length')
    return { path, change: steps * step, share: (total('along') * steps) / total('whole'), value }
  })
  const possible = found.filter(
    ({ path, value, change, share }) => share >= leastShare && isPossible(path, value + change),
  )
  const best = possible.reduce((most, { share }) => Math.max(most, share), 0)
  return possible
    .filter(({ share }) => share >= nearlyBest * best)
    .toSorted((one, other) => other.share - one.share)
    .slice(0, mostNamed)
    .map(({ path, change, share }) => ({ path, change, share }))
}
