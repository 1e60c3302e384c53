import { finiteOrNull } from '../../numeric/finite.ts'
import { groundSpeedOfRpm } from '../../vehicle/logged-speed.ts'
import type { LogData } from '../data.ts'
import type { AmpsSource, Currents } from '../derive/current.ts'
import { wholeCourseOf } from '../derive/load-course.ts'
import { packResistanceOf, type LoggedResistance } from '../derive/pack-resistance.ts'
import { slipOf } from '../derive/slip.ts'
import type { Episode } from '../episodes/episode.ts'
import type { LogModel } from '../model.ts'
import type { InPieces } from '../pieces.ts'
import { chargeOf, minutesLeftOf, restCellVoltsOf, type ChargeSource, type LoggedCharge } from './charge.ts'
import { integralOf } from './integral.ts'
import { momentOf, mostOf, peaksOf, type Moment, type Most } from './moments.ts'
import { sharesOf, type Shares } from './shares.ts'
import { kilo, secondsPerHour } from '../../units/factors.ts'

/** What a log says of the run as a whole; SI, null where it cannot say. */
export interface LogFacts extends LoggedCharge, Shares {
  readonly seconds: number
  readonly rows: number
  readonly peaks: Readonly<Record<string, Moment>>
  /** By the motor's rpm, while the track was on. */
  readonly topSpeedMps: Moment | null
  readonly distanceM: number | null
  readonly coveredSeconds: number
  readonly topSpeedFrom: string | null
  /** By the logged speed. */
  readonly loggedDistanceM: number | null
  readonly slip: { readonly median: number; readonly samples: number } | null
  readonly whPerKm: number | null
  readonly restCellVolts: readonly [number | null, number | null]
  readonly minutesLeft: number | null
  readonly minutesFrom: ChargeSource | null
  readonly packOhm: (LoggedResistance & { readonly model: number }) | null
  readonly most: Most
  readonly ampsFrom: AmpsSource | null
  readonly sagStepAmps: number | null
  readonly rmsMotorAmps: number | null
  readonly loadPercent: number | null
}

/**
 * The facts of a log.
 *
 * @param rpmFrom the column that gives the rpm; null without one
 */
export function* factsOf(
  data: LogData,
  model: LogModel,
  currents: Currents,
  episodes: readonly Episode[],
  rpmFrom: string | null,
): InPieces<LogFacts> {
  const { timeline } = data
  const seconds = timeline.segments.reduce((sum, { end }) => sum + (timeline.t[end - 1] ?? 0), 0)
  const until = trackOnUntil(episodes)
  const charge = yield* chargeOf(data)
  yield
  const rest = restCellVoltsOf(data, model)
  const travel = travelOf(data, model, until)
  yield
  const resistance = packResistanceOf(data)
  yield
  const top = model.checked.evaluation.top.motorAmps
  const rms = rmsOf(data, currents)
  const shares = sharesOf(data, currents, top)
  yield
  const loads = yield* wholeCourseOf({ data, model }, currents)
  yield
  const most = mostOf(data, currents, loads)
  const peaks = peaksOf(data)
  yield
  const slip = slipOf(data, model)
  yield
  return {
    seconds,
    rows: timeline.count,
    peaks,
    ...travel,
    topSpeedFrom: travel.topSpeedMps === null ? null : rpmFrom,
    loggedDistanceM: loggedDistanceOf(data),
    slip,
    ...charge,
    whPerKm: consumptionOf(data, charge, travel.distanceM),
    restCellVolts: rest,
    ...minutesLeftOf(model, charge, rest, seconds),
    packOhm: resistance === null ? null : { ...resistance, model: model.machine.pack.resistance },
    most,
    ampsFrom: currents.source,
    sagStepAmps: finiteOrNull(currents.sagStep),
    rmsMotorAmps: rms,
    loadPercent: rms === null ? null : finiteOrNull((100 * rms) / top),
    ...shares,
  }
}

/** s in a segment, from 0, up to which the track was certainly on. */
export function trackOnUntil(episodes: readonly Episode[]): (segment: number) => number {
  const ends = new Map(
    episodes.flatMap(({ kind, segment, before }) =>
      kind === 'load-lost' && before !== undefined ? [[segment - 1, before.from] as const] : [],
    ),
  )
  return (segment) => ends.get(segment) ?? Infinity
}

function travelOf(
  data: LogData,
  model: LogModel,
  until: (segment: number) => number,
): Pick<LogFacts, 'topSpeedMps' | 'distanceM' | 'coveredSeconds'> {
  const rpm = data.channels.get('rpm')
  if (rpm === undefined) return { topSpeedMps: null, distanceM: null, coveredSeconds: 0 }
  const { samples, values, timeline } = rpm
  const speedAt = (row: number) => groundSpeedOfRpm(model.machine, values[row] ?? NaN, model.slip)
  const travel = integralOf(rpm, (place) => speedAt(samples[place] ?? 0), until)
  let best = -1
  for (const row of samples) {
    if ((timeline.t[row] ?? 0) > until(timeline.segmentOf[row] ?? 0)) continue
    if (best < 0 || (values[row] ?? NaN) > (values[best] ?? NaN)) best = row
  }
  return {
    topSpeedMps: best < 0 ? null : momentOf(data, best, speedAt(best)),
    distanceM: travel.seconds > 0 ? travel.value : null,
    coveredSeconds: travel.seconds,
  }
}

function loggedDistanceOf({ channels }: LogData): number | null {
  const speed = channels.get('speed')
  if (speed === undefined) return null
  const travel = integralOf(speed, (place) => speed.values[speed.samples[place] ?? 0] ?? NaN)
  return travel.seconds > 0 ? travel.value : null
}

/** RMS of one motor's current over the samples where it is known, A. */
function rmsOf(data: LogData, currents: Currents): number | null {
  const rpm = data.channels.get('rpm')
  if (rpm === undefined) return null
  const squares = integralOf(rpm, (place) => (currents.motor[place] ?? NaN) ** 2)
  return squares.seconds > 0 ? Math.sqrt(squares.value / squares.seconds) : null
}

/** m below which a consumption says nothing. */
const leastDistance = 10

/** J/m in one W·h/km. */
const joulesPerMetre = secondsPerHour / kilo

/** W·h for a kilometre: by the energy integrated, else counted, else by the charge counted and the mean volts. */
function consumptionOf(data: LogData, charge: LoggedCharge, distance: number | null): number | null {
  if (distance === null || distance < leastDistance) return null
  const volts = data.channels.get('volts')
  const mean =
    volts === undefined || volts.samples.length === 0
      ? NaN
      : volts.samples.reduce((sum, row) => sum + (volts.values[row] ?? 0), 0) / volts.samples.length
  const counted = charge.chargeCCounted === null ? NaN : charge.chargeCCounted * mean
  const joules = charge.energyJIntegrated ?? charge.energyJCounted ?? counted
  return finiteOrNull(joules / joulesPerMetre / distance)
}
