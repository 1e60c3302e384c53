import { Footing, setFooting } from '../../ground/footing.ts'
import { airDragFactorOf, resistanceAt } from '../../ground/resistance.ts'
import type { Machine } from '../../machine/parts.ts'
import { torqueConstantAt } from '../../motor/constants.ts'
import { internalDragAt } from '../../track/drag.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import { equivalentMassOf } from '../../vehicle/inertia.ts'
import { Whitener } from '../cholesky.ts'
import { piecesOf } from '../pieces.ts'
import type { Prepared, Track } from '../prepare.ts'
import { beltSpeedOf, slipOf } from './belt.ts'
import { joined, withoutOffset, type Block } from './block.ts'

/** Slower than this the ground's resistance is not the rolling one, m/s. */
const leastSpeed = 0.5
/** Rows nearer to each other than this tell the same, s. */
const leastApart = 0.1

/** What a machine's acceleration is made of. */
interface Going {
  readonly machine: Machine
  readonly footing: Footing
  readonly airDrag: number
  /** M G η/r: pull of the tracks per N·m of one motor. */
  readonly pullPerTorque: number
  readonly noLoadBase: number
  readonly noLoadSlope: number
  readonly onGround: { readonly mass: number; readonly grip: number }
  /** kg that are left to accelerate with the loops in the air. */
  readonly massInAir: number
}

function goingOf(machine: Machine): Going {
  const { motor, train, track, vehicle, ground } = machine
  const footing = new Footing()
  setFooting(footing, machine, ground.sinSlope, ground.cosSlope)
  const whole = equivalentMassOf(machine)
  return {
    machine,
    footing,
    airDrag: airDragFactorOf(machine),
    pullPerTorque: (motor.count * train.ratio * train.efficiency) / track.radius,
    noLoadBase: motor.noLoadAmps * (1 - motor.viscousShare),
    noLoadSlope: (motor.noLoadAmps * motor.viscousShare) / motor.referenceSpeed,
    onGround: { mass: whole, grip: 1 - slipOf(machine) },
    massInAir: whole - vehicle.mass,
  }
}

/** Pull of the motors before the loops' own drag, N. */
function pullAt(going: Going, track: Track, row: number): number {
  const speed = track.speed[row] ?? NaN
  const constant = torqueConstantAt(going.machine.motor, track.winding[row] ?? NaN)
  const noLoad = going.noLoadBase + going.noLoadSlope * speed
  return going.pullPerTorque * constant * ((track.amps[row] ?? NaN) - noLoad)
}

/** dv_b/dt by the machine, m/s²: in the air nothing holds but the loops. */
function accelerationAt(going: Going, track: Track, row: number): number {
  const belt = beltSpeedOf(going.machine, track.speed[row] ?? NaN)
  const thrust = pullAt(going, track, row) - internalDragAt(going.machine.track, belt)
  if (track.offGround) return thrust / going.massInAir
  const { mass, grip } = going.onGround
  return (thrust - resistanceAt(going.footing, going.airDrag, belt * grip)) / (mass * grip)
}

/** A piece with what does not change with the entries. */
interface SpeedPiece {
  readonly cluster: string
  readonly track: Track
  readonly rows: readonly number[]
  /** Places among the rows that are compared. */
  readonly compared: readonly number[]
  readonly whitener: Whitener
  readonly direction: Float64Array
}

/** Places at least a tenth of a second apart. */
function apart(track: Track, rows: readonly number[]): readonly number[] {
  const kept: number[] = []
  let last = -Infinity
  rows.forEach((row, place) => {
    const time = track.seconds[row] ?? NaN
    if (time - last < leastApart - 1e-9) return
    kept.push(place)
    last = time
  })
  return kept
}

/**
 * Covariance of integrated speeds: σ_v² of each, and what noisy amps have walked up to the earlier one.
 *
 * W = Σ(∂a/∂I)² Δt² (σ_I² + ΔI²/12).
 */
function whitenerOf(
  going: Going,
  track: Track,
  rows: readonly number[],
  compared: readonly number[],
  sigmaBelt: number,
  sigmaAmps: number,
): Whitener {
  const { mass, grip } = going.onGround
  const inertia = track.offGround ? going.massInAir : mass * grip
  let sum = 0
  const walked = rows.map((row, place) => {
    const before = rows[place - 1]
    if (before === undefined) return 0
    const perAmp = (going.pullPerTorque * going.machine.motor.torqueConstant) / inertia
    const step = (track.seconds[row] ?? NaN) - (track.seconds[before] ?? NaN)
    const change = (track.amps[row] ?? NaN) - (track.amps[before] ?? NaN)
    sum += perAmp ** 2 * step ** 2 * (sigmaAmps ** 2 + change ** 2 / 12)
    return sum
  })
  return new Whitener(compared.length, (one, other) => {
    const walk = walked[compared[Math.min(one, other)] ?? 0] ?? NaN
    return one === other ? sigmaBelt ** 2 + walk : walk
  })
}

function residualsOf(going: Going, { track, rows, compared, whitener, direction }: SpeedPiece): Float64Array {
  let sum = 0
  let before = NaN
  const lost = rows.map((row, place) => {
    const here = accelerationAt(going, track, row)
    const last = rows[place - 1]
    if (last !== undefined)
      sum += (((track.seconds[row] ?? NaN) - (track.seconds[last] ?? NaN)) * (here + before)) / 2
    before = here
    return beltSpeedOf(going.machine, track.speed[row] ?? NaN) - sum
  })
  return withoutOffset(whitener.whitened(compared.map((place) => lost[place] ?? NaN)), direction)
}

/**
 * Belt speed less the machine's integrated acceleration, whitened, one free start a piece: it tells rolling resistance,
 * the loops' drag and the air's.
 *
 * v_b(t) − v_b0 − ∫(F_m − R) dt/[m_e (1 − i)].
 *
 * *Source:* coasting by integration as in R. A. White and H. H. Korst, SAE 720099; generalised least squares, A. C.
 * Aitken (1935).
 */
export function speedBlock({ tracks, noise }: Prepared, build: Machine): Block {
  const going = goingOf(build)
  const sigmaBelt = beltSpeedOf(build, angularSpeedOf(noise.get('motorRpm')?.sigma ?? NaN))
  const sigmaAmps = noise.get('motorAmps')?.sigma ?? NaN
  let spun = 0
  const pieces = tracks.flatMap((track) => {
    const takes = (row: number) =>
      beltSpeedOf(build, track.speed[row] ?? NaN) >= leastSpeed && !Number.isNaN(track.amps[row])
    const cut = piecesOf({ segment: track.segment, times: track.seconds, takes, fewest: 5 })
    return cut.flatMap(({ cluster, rows }): SpeedPiece[] => {
      const grips =
        track.offGround || rows.every((row) => pullAt(going, track, row) <= going.footing.gripThrust)
      if (!grips) {
        spun += 1
        return []
      }
      const compared = apart(track, rows)
      if (compared.length < 5) return []
      const whitener = whitenerOf(going, track, rows, compared, sigmaBelt, sigmaAmps)
      const direction = whitener.whitened(compared.map(() => 1))
      return [{ cluster, track, rows, compared, whitener, direction }]
    })
  })
  return {
    name: 'speed',
    clusters: pieces.flatMap(({ cluster, compared }) => compared.map(() => cluster)),
    reads: new Set([
      'ground.rollingCoefficient',
      'track.internalDragN',
      'track.internalDragNPerMps',
      'vehicle.dragCoefficient',
      'motor.kvRpmPerVolt',
      'motor.resistanceMilliohm',
      'ground.slipPercent',
    ]),
    offsets: pieces.length,
    residualsOf: (machine) => {
      const now = goingOf(machine)
      return joined(pieces.map((piece) => residualsOf(now, piece)))
    },
    spun,
    places: pieces.flatMap(({ track, rows, compared }) =>
      compared.map((place) => ({
        segment: track.segment,
        seconds: track.seconds[rows[place] ?? 0] ?? NaN,
      })),
    ),
  }
}
