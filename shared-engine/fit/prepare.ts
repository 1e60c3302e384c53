import type { Machine } from '../machine/parts.ts'
import { accessoryAmpsOf } from '../pack/accessories.ts'
import { angularSpeedOf } from '../units/rpm.ts'
import { channelNames, type ChannelName, type FitLog, type Segment } from './log.ts'
import { noiseOf, type Noise } from './noise.ts'

/** A segment's channels as arrays, NaN where a row lacks one. */
export interface Track {
  readonly segment: number
  readonly offGround: boolean
  readonly seconds: Float64Array
  readonly volts: Float64Array
  readonly packAmps: Float64Array
  /** A of one motor: as logged, or worked out of the pack's. */
  readonly amps: Float64Array
  readonly duty: Float64Array
  /** rad/s of the motor. */
  readonly speed: Float64Array
  readonly ground: Float64Array
  readonly celsius: Float64Array
  /** °C of winding and magnets: as logged with gaps bridged, or the service temperature. */
  readonly winding: Float64Array
}

/** A log made ready, with the noise of its channels. */
export interface Prepared {
  readonly tracks: readonly Track[]
  /** By channel; those that the log has, and motor amps where they are worked out. */
  readonly noise: ReadonlyMap<ChannelName, Noise>
  /** Largest motor amps of the log. */
  readonly mostAmps: number
}

/** Least duty at which motor amps can be worked out of the pack's. */
const leastDuty = 0.1

function columnOf(segment: Segment, name: ChannelName): Float64Array {
  const column = segment.channels[name]
  return Float64Array.from(segment.seconds, (_, row) => column?.[row] ?? NaN)
}

const hasAny = (log: FitLog, name: ChannelName) =>
  log.segments.some(({ channels }) => channels[name]?.some((value) => value !== null) === true)

/** Gaps bridged by straight lines, ends held; the service temperature where nothing was logged. */
function bridged(celsius: Float64Array, seconds: Float64Array, otherwise: number): Float64Array {
  const known = [...celsius.keys()].filter((row) => !Number.isNaN(celsius[row]))
  if (known.length === 0) return celsius.map(() => otherwise)
  let at = 0
  return celsius.map((value, row) => {
    if (!Number.isNaN(value)) return value
    while (at + 1 < known.length && (known[at + 1] ?? 0) < row) at += 1
    const [before = 0, after = known[at] ?? 0] = [known[at], known[at + 1]]
    if (row < before || after <= before) return celsius[before] ?? NaN
    const share =
      ((seconds[row] ?? 0) - (seconds[before] ?? 0)) / ((seconds[after] ?? 0) - (seconds[before] ?? 0))
    return (celsius[before] ?? NaN) + share * ((celsius[after] ?? NaN) - (celsius[before] ?? NaN))
  })
}

/** Makes a log ready for a fit of one machine. */
export function preparedOf(log: FitLog, machine: Machine): Prepared {
  const logged = hasAny(log, 'motorAmps')
  const { pack } = machine
  const accessory = accessoryAmpsOf(machine.accessories.power, pack.openVolts, pack.resistance)
  const tracks = log.segments.map((segment, at): Track => {
    const seconds = Float64Array.from(segment.seconds)
    const packAmps = columnOf(segment, 'packAmps')
    const duty = columnOf(segment, 'duty')
    const celsius = columnOf(segment, 'motorCelsius')
    const fromPack = packAmps.map((amps, row) => {
      const d = duty[row] ?? NaN
      return d >= leastDuty ? (amps - accessory) / (machine.motor.count * d) : NaN
    })
    return {
      segment: at,
      offGround: segment.offGround,
      seconds,
      // No pack that drives shows 0 V or less: a sensor that is not there, or the wrong way round.
      volts: columnOf(segment, 'packVolts').map((volts) => (volts > 0 ? volts : NaN)),
      packAmps,
      amps: logged ? columnOf(segment, 'motorAmps') : fromPack,
      duty,
      speed: columnOf(segment, 'motorRpm').map(angularSpeedOf),
      ground: columnOf(segment, 'groundMps'),
      celsius,
      winding: bridged(celsius, seconds, machine.service.windingTemperature),
    }
  })
  return { tracks, noise: noisesOf(log, tracks, logged), mostAmps: mostOf(tracks) }
}

function noisesOf(log: FitLog, tracks: readonly Track[], logged: boolean): ReadonlyMap<ChannelName, Noise> {
  const orNull = (value: number) => (Number.isNaN(value) ? null : value)
  const noises = new Map<ChannelName, Noise>()
  for (const name of channelNames) {
    const columns =
      name === 'motorAmps' && !logged
        ? tracks.map(({ amps }) => Array.from(amps, orNull))
        : log.segments.map(({ channels }) => channels[name] ?? [])
    if (!columns.some((column) => column.some((value) => value !== null))) continue
    const found = noiseOf(columns)
    const known = log.noise[name]
    noises.set(name, known === undefined ? found : { sigma: known, scatters: found.scatters })
  }
  return noises
}

const mostOf = (tracks: readonly Track[]) =>
  tracks.reduce((most, { amps }) => amps.reduce((sofar, value) => (value > sofar ? value : sofar), most), 0)
