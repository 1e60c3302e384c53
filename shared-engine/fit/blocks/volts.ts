import type { Machine } from '../../machine/parts.ts'
import { torqueConstantAt, windingResistanceAt } from '../../motor/constants.ts'
import { pieceSeconds, piecesOf } from '../pieces.ts'
import type { Prepared, Track } from '../prepare.ts'
import { wholeSpans } from '../whole-seconds.ts'
import type { Block } from './block.ts'
import { angularSpeedOf } from '../../units/rpm.ts'

/** Means over one second. */
interface Second {
  readonly count: number
  /** mean(δ V). */
  readonly driven: number
  readonly volts: number
  readonly duty: number
  readonly amps: number
  readonly speed: number
  readonly celsius: number
  /** mean(I [1 + α (T − 20)]), A, and mean(T ω): each row has its own temperature. */
  readonly heatedAmps: number
  readonly heatedSpeed: number
}

const leastDuty = 0.05
const leastShareOfAmps = 0.05

function secondOf(track: Track, rows: readonly number[]): Second {
  const over = (value: (row: number) => number) =>
    rows.reduce((sum, row) => sum + value(row), 0) / rows.length
  const at = (column: Float64Array) => (row: number) => column[row] ?? NaN
  const duty = at(track.duty)
  const volts = at(track.volts)
  const amps = at(track.amps)
  const speed = at(track.speed)
  const celsius = at(track.winding)
  return {
    count: rows.length,
    driven: over((row) => duty(row) * volts(row)),
    volts: over(volts),
    duty: over(duty),
    amps: over(amps),
    speed: over(speed),
    celsius: over(celsius),
    heatedAmps: over((row) => amps(row) * windingResistanceAt(1, celsius(row))),
    heatedSpeed: over((row) => celsius(row) * speed(row)),
  }
}

/** Sensor noise, one row. */
interface Sigmas {
  readonly volts: number
  readonly duty: number
  readonly amps: number
  readonly speed: number
}

/**
 * mean(δ V) − R_s Ī − K_t ω̄ of a second, over √{[(δ σ_V)² + (V σ_δ)² + (R_s σ_I)² + (K_t σ_ω)²]/n}.
 *
 * *Source:* averaged circuit of the first-order motor, Drela; errors in all channels after D. York, Can. J. Phys. 44 (1966).
 */
function residualOf(machine: Machine, at: Second, sigma: Sigmas): number {
  const { motor, controller } = machine
  // K_t is linear in temperature, so that its mean with the speed needs the two means alone.
  const [atZero, atOne] = [torqueConstantAt(motor, 0), torqueConstantAt(motor, 1)]
  const drop = motor.resistance * at.heatedAmps + controller.resistance * at.amps
  const emf = atZero * at.speed + (atOne - atZero) * at.heatedSpeed
  return (at.driven - drop - emf) / residualScale(machine, at, sigma)
}

/** Volts against amps and speed, second by second: it tells the speed constant and the winding's resistance. */
export function voltsBlock({ tracks, noise, mostAmps }: Prepared): Block {
  const sigma = {
    volts: noise.get('packVolts')?.sigma ?? NaN,
    duty: noise.get('duty')?.sigma ?? NaN,
    amps: noise.get('motorAmps')?.sigma ?? NaN,
    speed: angularSpeedOf(noise.get('motorRpm')?.sigma ?? NaN),
  }
  const used: { second: Second; cluster: string; segment: number; seconds: number }[] = []
  for (const track of tracks) {
    const { volts, duty, amps, speed } = track
    const takes = (row: number) =>
      (duty[row] ?? NaN) >= leastDuty &&
      !Number.isNaN(volts[row]) &&
      !Number.isNaN(amps[row]) &&
      !Number.isNaN(speed[row])
    const spans = wholeSpans(track.seconds, 1, takes)
      .map(({ second, rows }) => ({ second, mean: secondOf(track, rows) }))
      .filter(({ mean }) => mean.amps >= leastShareOfAmps * mostAmps)
    const cut = piecesOf({
      segment: track.segment,
      times: spans.map(({ second }) => second),
      takes: () => true,
      fewest: 2,
    })
    for (const { rows } of cut)
      for (const row of rows) {
        const span = spans[row]
        if (span !== undefined)
          used.push({
            second: span.mean,
            cluster: `${track.segment}:${Math.floor(span.second / pieceSeconds)}`,
            segment: track.segment,
            seconds: (track.seconds[0] ?? 0) + span.second + 0.5,
          })
      }
  }
  return {
    name: 'volts',
    clusters: used.map(({ cluster }) => cluster),
    reads: new Set(['motor.kvRpmPerVolt', 'motor.resistanceMilliohm']),
    offsets: 0,
    residualsOf: (machine) => Float64Array.from(used, ({ second }) => residualOf(machine, second, sigma)),
    noiseBetween: (machine, changed) =>
      Float64Array.from(used, ({ second }) => noiseBetween(machine, changed, second, sigma)),
    spun: 0,
    places: used.map(({ segment, seconds }) => ({ segment, seconds })),
  }
}

/** Noisy amps times a step of the resistance, noisy speed times a step of K_t, over the residual's scale. */
function noiseBetween(machine: Machine, changed: Machine, at: Second, sigma: Sigmas): number {
  const resistance =
    windingResistanceAt(changed.motor.resistance, at.celsius) -
    windingResistanceAt(machine.motor.resistance, at.celsius)
  const constant = torqueConstantAt(changed.motor, at.celsius) - torqueConstantAt(machine.motor, at.celsius)
  const noise = Math.hypot(resistance * sigma.amps, constant * sigma.speed)
  return noise / Math.sqrt(at.count) / residualScale(machine, at, sigma)
}

function residualScale(machine: Machine, at: Second, sigma: Sigmas): number {
  const { motor, controller } = machine
  const resistance = windingResistanceAt(motor.resistance, at.celsius) + controller.resistance
  return Math.sqrt(
    ((at.duty * sigma.volts) ** 2 +
      (at.volts * sigma.duty) ** 2 +
      (resistance * sigma.amps) ** 2 +
      (torqueConstantAt(motor, at.celsius) * sigma.speed) ** 2) /
      at.count,
  )
}
