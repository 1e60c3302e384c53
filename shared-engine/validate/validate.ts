import type { Build } from '../entries/schema.ts'
import { fitEntries } from '../fit/entries.ts'
import { inLoggedSegments } from '../fit/log.ts'
import { preparedOf, type Prepared } from '../fit/prepare.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { machineOf } from '../machine/machine.ts'
import { responsesOf, uncertaintiesOf } from './bands.ts'
import { comparisonsOf } from './comparisons.ts'
import { bandedSeries, judgedOf, type JudgedQuantity, type PredictedSeries } from './judge.ts'
import { explanationsOf, type Explanation } from './causes.ts'
import type { Comparison, QuantityId } from './quantity.ts'
import type { Run } from './run.ts'

/** Something that has to be said beside a comparison. */
export type ValidationNote =
  | 'throttle-as-duty'
  | 'amps-by-sag'
  | 'no-duty'
  | 'no-drive'
  | 'no-heat-entries'
  | 'no-temperature'
  | 'no-tolerances'
  | 'left-out'

/** Quantities that are off together, and the entries of which one would explain it; none: no single entry would. */
interface Cause {
  readonly about: readonly QuantityId[]
  readonly explanations: readonly Explanation[]
}

/** How a build agrees with a run. */
export interface Validation {
  readonly build: string
  /** What the prediction was driven by; null: the log has neither duty nor current. */
  readonly drivenBy: 'duty' | 'amps' | null
  readonly quantities: readonly JudgedQuantity[]
  /** What one entry alone would explain, of what is off together. */
  readonly causes: readonly Cause[]
  /** Seconds of the run that the model is not of. */
  readonly leftOutSeconds: number
  readonly notes: readonly ValidationNote[]
}

/** A comparison with its samples, for a plot. */
export interface TracedValidation {
  readonly validation: Validation
  readonly series: readonly PredictedSeries[]
}

/** Part of an entry of unknown uncertainty by which it is moved to see whether it would explain an error: that of a guess. */
const tryPart = 0.2

/**
 * Compares a build with a run that it was not fitted to: speed, current and temperature as the build predicts them against
 * what was measured, each with a band of two standard deviations from tolerances and sensors.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008) for the bands; what is called off: common practice, no source.
 */
export function validationOf(build: Build, run: Run): TracedValidation {
  const machine = machineOf(build)
  const prepared = preparedOf(run.log, machine)
  const inLog = inLoggedSegments(run.log)
  const { drivenBy, driven, heated } = comparisonsOf(prepared, machine)
  const compared = [driven, heated].flatMap((one) => (one === null ? [] : [seriesOf(build, one).map(inLog)]))
  const series = compared.flat()
  const quantities = series.flatMap((one) => judgedOf(one) ?? [])
  return {
    validation: {
      build: build.name,
      drivenBy,
      quantities,
      causes: compared.flatMap(causesOf),
      leftOutSeconds: run.leftOutSeconds,
      notes: notesOf(build, run, prepared, drivenBy),
    },
    series: series.filter(({ id }) => quantities.some((one) => one.id === id)),
  }
}

function causesOf(series: readonly PredictedSeries[]): readonly Cause[] {
  const about = series.filter((one) => judgedOf(one)?.verdict === 'off').map(({ id }) => id)
  if (about.length === 0) return []
  return [{ about, explanations: explanationsOf(series.filter(({ measured }) => measured.length > 0)) }]
}

function seriesOf(build: Build, comparison: Comparison): readonly PredictedSeries[] {
  const nominal = comparison.predictedBy(machineOf(build))
  const known = uncertaintiesOf(build)
  const responses = responsesOf(build, comparison, nominal, known)
  const tries = new Map(
    fitEntries.flatMap(({ path }) => {
      const value = valueAt(build, keysOf(path))
      return known.has(path) || typeof value !== 'number' || value === 0
        ? []
        : [[path, tryPart * Math.abs(value)] as const]
    }),
  )
  const tried = responsesOf(build, comparison, nominal, tries)
  return comparison.series.map((one, at) =>
    bandedSeries(one, nominal[at] ?? new Float64Array(), at, responses, tried),
  )
}

function notesOf(
  build: Build,
  run: Run,
  { noise }: Prepared,
  drivenBy: Validation['drivenBy'],
): readonly ValidationNote[] {
  const { motor } = build
  const lump = motor.thermalResistanceKPerW !== undefined && motor.heatCapacityJPerK !== undefined
  const found: readonly (readonly [boolean, ValidationNote])[] = [
    [drivenBy === null, 'no-drive'],
    [drivenBy === 'amps', 'no-duty'],
    [drivenBy === 'duty' && run.throttleAsDuty, 'throttle-as-duty'],
    [run.ampsFrom === 'sag', 'amps-by-sag'],
    [!noise.has('motorCelsius'), 'no-temperature'],
    [noise.has('motorCelsius') && !lump, 'no-heat-entries'],
    [uncertaintiesOf(build).size === 0, 'no-tolerances'],
    [run.leftOutSeconds > 0, 'left-out'],
  ]
  return found.flatMap(([holds, note]) => (holds ? [note] : []))
}
