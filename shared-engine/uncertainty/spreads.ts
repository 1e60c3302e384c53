import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build, EntryOrigin } from '../entries/schema.ts'

/** How far an entry may lie from the truth by where it comes from; bench unit, two standard deviations. */
export interface Spread {
  readonly plusMinus: number
  readonly shape: 'normal'
}

/** Percent of the value. *Source:* common practice, no source. */
const percentOf: Readonly<Record<EntryOrigin, number>> = { measured: 3, stated: 10, guessed: 40, assumed: 40 }
/** Percent of the pitch, of the error of a pitch. *Source:* common practice, no source. */
const pitchPercentOf: Readonly<Record<EntryOrigin, number>> = {
  measured: 0.1,
  stated: 0.3,
  guessed: 1,
  assumed: 1,
}

const pitchError = 'track.pitchErrorMm'

/** Limits on labels: a promise, not a property. */
const labels =
  /^(pack\.(continuousC|burstC)|(motor|controller)\.(?!noLoadAmps$)\w*Amps|accessories\.\d+\.converterAmps|stepDowns\.\d+\.(amps|peakAmps)|.*\.(maxElectricalRpm|ratedMaxRpm|maxTemperatureC))$/

/** What a person chooses to look at. */
const conditions =
  /^(service\..*|controller\.throttleCapPercent|ground\.(gradePercent|sideSlopePercent|airTemperatureC|altitudeM)|track\.assemblyTemperatureC|vehicle\.(loadKg|towForceN))$/

/**
 * Spreads of entries whose origin is known and whose tolerance is not, by path.
 *
 * ±3 % measured, ±10 % stated, ±40 % guessed or assumed; of `track.pitchErrorMm` 0.1, 0.3 and 1 % of the pitch.
 * Whole numbers, zeros, limits on labels and chosen conditions have none.
 *
 * *Source:* `docs/model.md` §9; the widths are common practice, no source.
 */
export function spreadsOf(build: Build): Readonly<Record<string, Spread>> {
  const paths = Object.keys(build.origins).sort()
  return Object.fromEntries(
    paths.flatMap((path) => {
      const plusMinus = build.tolerances[path] === undefined ? widthOf(build, path) : null
      return plusMinus === null ? [] : [[path, { plusMinus, shape: 'normal' as const }]]
    }),
  )
}

function widthOf(build: Build, path: string): number | null {
  const value = valueAt(build, keysOf(path))
  const origin = build.origins[path]
  if (typeof value !== 'number' || origin === undefined) return null
  if (path === pitchError) return (build.track.pitchMm * pitchPercentOf[origin]) / 100
  return mayBeVague(path, value) ? (Math.abs(value) * percentOf[origin]) / 100 : null
}

/** Whether a number is one of the machine or its ground that can be known more or less well: no count, promise or wish. */
export function mayBeVague(path: string, value: number): boolean {
  return value !== 0 && fieldOf(path)?.whole !== true && !labels.test(path) && !conditions.test(path)
}
