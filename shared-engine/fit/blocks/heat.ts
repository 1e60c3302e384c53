import { copperTemperatureCoefficient } from '../../constants.ts'
import type { Machine } from '../../machine/parts.ts'
import { referenceTemperature, torqueConstantAt, windingResistanceAt } from '../../motor/constants.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import { Whitener } from '../cholesky.ts'
import type { Prepared, Track } from '../prepare.ts'
import { meanOver, wholeSpans } from '../whole-seconds.ts'
import { joined, withoutOffset, type Block } from './block.ts'

/** Temperatures are compared as means over this span, s. */
const meanSeconds = 5

/** Noise that squares would otherwise count as heat. */
interface Squares {
  readonly amps: number
  readonly speed: number
}

/** Coefficients of dT/dt = −a T + h at a row. */
interface Rate {
  readonly a: number
  readonly h: number
}

/**
 * Heat balance of the motor's lump at a row: a = (1/R_th − I² R_20 α)/C, h = [P_fe + I² R_20 (1 − 20 α) + T_s/R_th]/C;
 * I² and ω² less the squares of their noise.
 *
 * *Source:* C dT/dt = P_fe + I² R_20 [1 + α (T − 20)] − (T − T_s)/R_th.
 */
function rateAt(machine: Machine, track: Track, row: number, noise: Squares): Rate {
  const { motor, controller, cooling, ground } = machine
  const celsius = track.winding[row] ?? NaN
  const amps = track.amps[row] ?? NaN
  const speed = track.speed[row] ?? NaN
  const ampsSquared = amps * amps - noise.amps
  const constant = torqueConstantAt(motor, celsius)
  const perSpeed = (motor.noLoadAmps * motor.viscousShare) / motor.referenceSpeed
  const iron =
    constant *
    (motor.noLoadAmps * (1 - motor.viscousShare) * speed + perSpeed * (speed * speed - noise.speed))
  const copper = ampsSquared * motor.resistance
  let sink = ground.airTemperature
  if (cooling !== null) {
    const winding = ampsSquared * windingResistanceAt(motor.resistance, machine.service.windingTemperature)
    sink += (motor.count * (iron + winding + ampsSquared * controller.resistance)) / cooling.radiator
  }
  const capacity = motor.heatCapacity ?? NaN
  const resistance = motor.thermalResistance ?? NaN
  const alpha = copperTemperatureCoefficient
  return {
    a: (1 / resistance - copper * alpha) / capacity,
    h: (iron + copper * (1 - referenceTemperature * alpha) + sink / resistance) / capacity,
  }
}

/** (1 − e^(−x))/x, 1 at 0. */
const grown = (x: number) => (Math.abs(x) < 1e-12 ? 1 : -Math.expm1(-x) / x)

/**
 * Temperature of the lump from 0 at the first row, °C, and what is left of a start of 1.
 *
 * @param noise σ² of amps and speed, which squares would count as heat
 */
export function courseOf(machine: Machine, track: Track, rows: readonly number[], noise: Squares) {
  const celsius = new Float64Array(track.seconds.length).fill(NaN)
  const left = celsius.slice()
  let temperature = 0
  let share = 1
  let before: Rate | null = null
  rows.forEach((row, place) => {
    const here = rateAt(machine, track, row, noise)
    const last = rows[place - 1]
    if (before !== null && last !== undefined) {
      const step = (track.seconds[row] ?? NaN) - (track.seconds[last] ?? NaN)
      const decay = (step * (here.a + before.a)) / 2
      const heat = (here.h + before.h) / 2
      temperature = temperature * Math.exp(-decay) + heat * step * grown(decay)
      share *= Math.exp(-decay)
    }
    celsius[row] = temperature
    left[row] = share
    before = here
  })
  return { celsius, left }
}

interface HeatSegment {
  readonly track: Track
  readonly rows: readonly number[]
  readonly spans: readonly { readonly second: number; readonly rows: readonly number[] }[]
  readonly whitener: Whitener
}

/**
 * Covariance of the means: σ_T² of each, over its rows where they scatter, and what the noise of the heat has walked up to
 * the earlier one, fading since.
 */
function whitenerOf(
  start: Machine,
  track: Track,
  rows: readonly number[],
  spans: HeatSegment['spans'],
  sigma: { readonly celsius: number; readonly scatters: boolean; readonly amps: number },
  noise: Squares,
): Whitener {
  const capacity = start.motor.heatCapacity ?? NaN
  const { left } = courseOf(start, track, rows, noise)
  const walked = new Float64Array(track.seconds.length)
  let sum = 0
  rows.forEach((row, place) => {
    const last = rows[place - 1]
    if (last === undefined) return
    const step = (track.seconds[row] ?? NaN) - (track.seconds[last] ?? NaN)
    const [here, before] = [track.amps[row] ?? NaN, track.amps[last] ?? NaN]
    const resistance = start.motor.resistance
    const kept = (left[row] ?? NaN) / (left[last] ?? NaN)
    const change = here * here - before * before
    sum =
      sum * kept * kept +
      ((step * resistance) / capacity) ** 2 * (4 * here * here * sigma.amps ** 2 + change ** 2 / 12)
    walked[row] = sum
  })
  const middle = spans.map((span) => span.rows[Math.floor(span.rows.length / 2)] ?? 0)
  return new Whitener(spans.length, (one, other) => {
    const [late, early] = [middle[Math.max(one, other)] ?? 0, middle[Math.min(one, other)] ?? 0]
    const walk = ((walked[early] ?? NaN) * (left[late] ?? NaN)) / (left[early] ?? NaN)
    const count = sigma.scatters ? (spans[one]?.rows.length ?? 1) : 1
    return one === other ? sigma.celsius ** 2 / count + walk : walk
  })
}

/**
 * Motor temperature less that of the lump, integrated row by row, one free start a segment: it tells thermal resistance
 * and heat capacity.
 *
 * *Source:* one lump with copper's rise; exact exponential step of a linear equation.
 */
export function heatBlock({ tracks, noise }: Prepared, start: Machine): Block {
  const sigmaAmps = noise.get('motorAmps')?.sigma ?? NaN
  const ofCelsius = noise.get('motorCelsius')
  const squares = {
    amps: sigmaAmps ** 2,
    speed: angularSpeedOf(noise.get('motorRpm')?.sigma ?? NaN) ** 2,
  }
  const sigma = { celsius: ofCelsius?.sigma ?? NaN, scatters: ofCelsius?.scatters ?? true, amps: sigmaAmps }
  const segments = tracks.flatMap((track): HeatSegment[] => {
    const rows = Array.from(track.seconds.keys()).filter(
      (row) => !Number.isNaN(track.amps[row]) && !Number.isNaN(track.speed[row]),
    )
    const known = new Set(rows)
    const spans = wholeSpans(
      track.seconds,
      meanSeconds,
      (row) => known.has(row) && !Number.isNaN(track.celsius[row]),
    )
    if (spans.length < 5) return []
    return [{ track, rows, spans, whitener: whitenerOf(start, track, rows, spans, sigma, squares) }]
  })
  return {
    name: 'heat',
    clusters: segments.flatMap(({ track, spans }) => spans.map(() => `${track.segment}`)),
    reads: new Set([
      'motor.kvRpmPerVolt',
      'motor.resistanceMilliohm',
      'motor.thermalResistanceKPerW',
      'motor.heatCapacityJPerK',
    ]),
    offsets: segments.length,
    residualsOf: (machine) =>
      joined(
        segments.map(({ track, rows, spans, whitener }) => {
          const { celsius, left } = courseOf(machine, track, rows, squares)
          const off = spans.map((span) => meanOver(track.celsius, span.rows) - meanOver(celsius, span.rows))
          const start = spans.map((span) => meanOver(left, span.rows))
          return withoutOffset(whitener.whitened(off), whitener.whitened(start))
        }),
      ),
    spun: 0,
    places: segments.flatMap(({ track, spans }) =>
      spans.map(({ second }) => ({
        segment: track.segment,
        seconds: (track.seconds[0] ?? 0) + (second + 0.5) * meanSeconds,
      })),
    ),
  }
}
