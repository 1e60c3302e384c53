import type { Machine } from '../machine/parts.ts'
import type { ChemistryId } from '../reference/chemistry.ts'
import { motorRows, packRows } from './lag-rows.ts'
import { medianOf } from './noise.ts'
import type { Prepared, Track } from './prepare.ts'
import { regressed, type RegressionRow } from './regressed.ts'
import { shiftedBy } from './shift.ts'

/** Channels that may come late: currents against the volts, the motor's temperature against its heat. */
type LateChannel = 'motorAmps' | 'packAmps' | 'motorCelsius'

/** How late a channel comes. */
export interface Lag {
  readonly channel: LateChannel
  /** s, above 0. */
  readonly seconds: number
  readonly standardError: number
}

/** A lag is taken out from this many standard errors on. */
const sure = 4
/** Less of a row than this is not seen among rows; errors by pieces of a log bear it. */
const leastShareOfRow = 0.3
/** s; more is no sensor's lag. */
const longest = 2
const mostRounds = 8

const stepOf = ({ seconds }: Track) =>
  medianOf(
    Array.from(
      { length: Math.max(0, seconds.length - 1) },
      (_, at) => (seconds[at + 1] ?? 0) - (seconds[at] ?? 0),
    ),
  )

/** The lag at which the rate of change of the current tells nothing more of the volts; null where there is no sure one. */
function lagFrom(
  rowsAt: (late: number) => readonly RegressionRow[],
  amps: number,
  channel: LateChannel,
  step: number,
): Lag | null {
  let late = 0
  for (let round = 0; round < mostRounds; round += 1) {
    const found = regressed(rowsAt(late))
    if (found === null) return null
    const { values, covariance } = found
    const slope = values[amps] ?? NaN
    const rate = values.length - 1
    const more = (values[rate] ?? NaN) / slope
    const standardError = Math.abs(Math.sqrt(covariance.get(rate, rate)) / slope)
    if (!Number.isFinite(more) || !Number.isFinite(standardError)) return null
    // A whole row at a time, so that a far lag is walked to and not jumped past.
    late += Math.max(-step, Math.min(step, more))
    if (Math.abs(late) > longest) return null
    if (Math.abs(more) < standardError / 20 || round === mostRounds - 1)
      return late > Math.max(sure * standardError, leastShareOfRow * step)
        ? { channel, seconds: late, standardError }
        : null
  }
  return null
}

/**
 * Currents that come late against the volts, by a log alone.
 *
 * Means over whole seconds: mean(δV) of amps, speed and the amps' own rate of change; V less the resting volts of pack amps
 * and their rate. A current that is read L late is I + L dI/dt, so that L is the rate's coefficient over the amps'; the
 * channel is moved by it, until the rate tells nothing more. Errors by pieces of ten seconds. Currents are never called
 * early: that is what a pack that recovers slowly looks like.
 *
 * @returns lags of more than four standard errors and 0.3 of a row, which a log of at least eight pieces can show
 * *Source:* first-order expansion in the lag (time-delay estimation), any text on system identification.
 */
export function lagsOf(prepared: Prepared, machine: Machine, chemistry: ChemistryId): readonly Lag[] {
  const has = (...names: readonly Parameters<typeof prepared.noise.has>[0][]) =>
    names.every((name) => prepared.noise.has(name))
  const steps = prepared.tracks.map(stepOf).filter((step) => step > 0)
  const step = steps.length === 0 ? 0 : Math.max(...steps)
  // Means of one row each cannot tell a lag from the noise that interpolation takes away.
  if (!(step > 0 && step <= 0.25)) return []
  const motor = has('packVolts', 'duty', 'motorAmps', 'motorRpm')
    ? lagFrom((late) => motorRows(prepared, machine, late), 0, 'motorAmps', step)
    : null
  const pack = has('packVolts', 'packAmps')
    ? lagFrom((late) => packRows(prepared, machine, chemistry, late), 0, 'packAmps', step)
    : null
  return [motor, pack].filter((lag) => lag !== null)
}

/** The log with lags taken out. */
export function withoutLags(prepared: Prepared, lags: readonly Lag[]): Prepared {
  if (lags.length === 0) return prepared
  const of = (channel: LateChannel) => lags.find((lag) => lag.channel === channel)?.seconds ?? 0
  return {
    ...prepared,
    tracks: prepared.tracks.map((track) => ({
      ...track,
      amps: shiftedBy(of('motorAmps'), track.amps, track.seconds),
      packAmps: shiftedBy(of('packAmps'), track.packAmps, track.seconds),
      celsius: shiftedBy(of('motorCelsius'), track.celsius, track.seconds),
    })),
  }
}
