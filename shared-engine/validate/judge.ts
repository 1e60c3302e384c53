import { studentFactor } from '../numeric/student.ts'
import type { Response } from './bands.ts'
import type { MeasuredSeries, QuantityId } from './quantity.ts'

/** A part of the run in which a quantity is looked at by itself. */
export type RegimeId = 'slow' | 'middling' | 'fast' | 'early' | 'late'

/** How a prediction does over some samples. SI. */
interface Agreement {
  readonly samples: number
  readonly measuredMean: number
  readonly predictedMean: number
  /** Mean of predicted less measured, and what tolerances and sensors allow it to be. */
  readonly meanError: number
  readonly meanAllowed: number
}

/** The sample that is furthest outside its band. */
interface Furthest {
  readonly segment: number
  readonly seconds: number
  readonly measured: number
  readonly predicted: number
  /** Half width of the band there. */
  readonly band: number
}

/** How one quantity of a build agrees with a run. */
export interface JudgedQuantity extends Agreement {
  readonly id: QuantityId
  readonly rmsError: number
  /** Part of the samples within their band, which 95 of 100 are where the model is right. */
  readonly withinShare: number
  readonly verdict: 'agrees' | 'off'
  readonly furthest: Furthest
  /** Where it is off most beyond what is allowed; null: nowhere. */
  readonly worst: ({ readonly id: RegimeId } & Agreement) | null
}

/** Differences of less than this part of the mean are not called off. *Source:* common practice, no source. */
const smallPart = 0.01
/** Fewer of the samples in their bands than this, and the model misses something. *Source:* common practice, no source. */
const leastWithin = 0.8
/** Of five parts one may be beyond 95 of 100 by chance: a part is off from here on. */
const partBeyond = 1.5
/** Fewest samples of a part of the run, and their fewest share of it. */
const fewestSamples = 8
const leastPart = 0.05
/** What lies within so many seconds errs together. */
const togetherSeconds = 10

/** A series with its prediction and half widths of the band, sample by sample. */
export interface PredictedSeries extends MeasuredSeries {
  readonly predicted: Float64Array
  /** Two standard deviations of tolerances and sensors. */
  readonly band: Float64Array
  /** What each entry's uncertainty does to it. */
  readonly responses: readonly OwnResponse[]
  /** The same of entries that are moved to look for a cause, though nothing says how sure they are. */
  readonly tried: readonly OwnResponse[]
}

export interface OwnResponse {
  readonly path: string
  /** What the build has. */
  readonly value: number
  readonly step: number
  readonly change: Float64Array
}

/** Puts bands to a prediction. */
export function bandedSeries(
  series: MeasuredSeries,
  predicted: Float64Array,
  place: number,
  responses: readonly Response[],
  tried: readonly Response[],
): PredictedSeries {
  const ownOf = ({ path, step, value, changes }: Response) => ({
    path,
    step,
    value,
    change: changes[place] ?? new Float64Array(),
  })
  const own = responses.map(ownOf)
  const band = predicted.map((_, at) => {
    const squares = own.reduce(
      (sum, { change }) => sum + (change[at] ?? 0) ** 2,
      (series.sigma[at] ?? 0) ** 2,
    )
    return 2 * Math.sqrt(squares)
  })
  return { ...series, predicted, band, responses: own, tried: tried.map(ownOf) }
}

/**
 * Standard error of a mean whose samples err together within some seconds, and the factor for 95 of 100.
 *
 * s² = N/(N − 1) Σ_c [Σ_{k∈c} (e_k − ē)]²/n² over N clusters c of n samples.
 *
 * *Source:* K.-Y. Liang and S. L. Zeger, Biometrika 73 (1986), for a mean.
 */
function widthOfMean(
  { segments, seconds }: PredictedSeries,
  at: readonly number[],
  errors: readonly number[],
): number {
  const mean = errors.reduce((sum, one) => sum + one, 0) / errors.length
  const sums = new Map<string, number>()
  at.forEach((sample, place) => {
    const cluster = `${segments[sample]}:${Math.floor((seconds[sample] ?? 0) / togetherSeconds)}`
    sums.set(cluster, (sums.get(cluster) ?? 0) + (errors[place] ?? 0) - mean)
  })
  const count = sums.size
  if (count < 2) return Infinity
  const squares = [...sums.values()].reduce((sum, one) => sum + one * one, 0)
  return (studentFactor(count - 1) * Math.sqrt((count / (count - 1)) * squares)) / errors.length
}

/** Means over some samples of a series. */
function agreementOf(series: PredictedSeries, at: readonly number[], scale: number): Agreement {
  const mean = (value: (sample: number) => number) =>
    at.reduce((sum, sample) => sum + value(sample), 0) / at.length
  const measuredMean = mean((sample) => series.measured[sample] ?? NaN)
  const predictedMean = mean((sample) => series.predicted[sample] ?? NaN)
  const errors = at.map((sample) => (series.predicted[sample] ?? NaN) - (series.measured[sample] ?? NaN))
  const spread = series.responses.reduce(
    (sum, { change }) => sum + mean((sample) => change[sample] ?? 0) ** 2,
    0,
  )
  const allowed = Math.hypot(widthOfMean(series, at, errors), 2 * Math.sqrt(spread), 2 * series.shared)
  return {
    samples: at.length,
    measuredMean,
    predictedMean,
    meanError: predictedMean - measuredMean,
    meanAllowed: Math.max(allowed, smallPart * scale),
  }
}

const beyond = ({ meanError, meanAllowed }: Agreement) => Math.abs(meanError) / meanAllowed

/** Samples of each part of the run, by speed and by time. */
function regimesOf({
  speeds,
  segments,
  seconds,
}: PredictedSeries): readonly (readonly [RegimeId, readonly number[]])[] {
  const all = [...segments.keys()]
  const last = segments.at(-1) ?? 0
  const middle = seconds[Math.floor(all.length / 2)] ?? 0
  const half = (late: boolean) => all.filter((at) => (seconds[at] ?? 0) >= middle === late)
  const byTime: readonly (readonly [RegimeId, readonly number[]])[] =
    last > 0
      ? []
      : [
          ['early', half(false)],
          ['late', half(true)],
        ]
  if (speeds === null) return byTime
  const most = speeds.reduce((largest, value) => Math.max(largest, value), 0)
  const third = (part: number) =>
    all.filter((at) => Math.min(2, Math.floor((3 * (speeds[at] ?? 0)) / most)) === part)
  return [['slow', third(0)], ['middling', third(1)], ['fast', third(2)], ...byTime]
}

function furthestOf({ measured, predicted, band, segments, seconds }: PredictedSeries): Furthest {
  const outside = (at: number) => Math.abs((predicted[at] ?? 0) - (measured[at] ?? 0)) / (band[at] ?? 1)
  const at = [...measured.keys()].reduce((best, one) => (outside(one) > outside(best) ? one : best), 0)
  return {
    segment: segments[at] ?? 0,
    seconds: seconds[at] ?? 0,
    measured: measured[at] ?? NaN,
    predicted: predicted[at] ?? NaN,
    band: band[at] ?? NaN,
  }
}

/** From the least to the most: a temperature is no share of 0 °C. */
const riseOf = (values: Float64Array) =>
  values.reduce((most, one) => Math.max(most, one), -Infinity) -
  values.reduce((least, one) => Math.min(least, one), Infinity)

/** Judges one quantity; null with too few samples to say anything. */
export function judgedOf(series: PredictedSeries): JudgedQuantity | null {
  const { id, measured, predicted, band } = series
  const count = measured.length
  if (count < fewestSamples) return null
  const scale =
    id === 'temperature'
      ? riseOf(measured)
      : measured.reduce((sum, value) => sum + Math.abs(value), 0) / count
  const errors = predicted.map((value, at) => value - (measured[at] ?? NaN))
  const inside = errors.filter(
    (error, at) => Math.abs(error) <= Math.max(band[at] ?? 0, 2 * smallPart * scale),
  ).length
  const whole = agreementOf(series, [...measured.keys()], scale)
  const parts = regimesOf(series)
    .filter(([, at]) => at.length >= Math.max(fewestSamples, leastPart * count))
    .map(([name, at]) => ({ id: name, ...agreementOf(series, at, scale) }))
    .filter((part) => beyond(part) > partBeyond)
    .toSorted((one, other) => beyond(other) - beyond(one))
  const off = beyond(whole) > 1 || parts.length > 0 || inside / count < leastWithin
  return {
    id,
    ...whole,
    rmsError: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / count),
    withinShare: inside / count,
    verdict: off ? 'off' : 'agrees',
    furthest: furthestOf(series),
    worst: parts[0] ?? null,
  }
}
