import type { Prepared, Track } from '../fit/prepare.ts'
import type { Machine } from '../machine/parts.ts'
import { angularSpeedOf } from '../units/rpm.ts'
import { betweenRows, groundNoiseOf, showsGround } from './by-duty.ts'
import { beltCourse } from './course.ts'
import { Motion } from './motion.ts'
import { Samples, type Comparison, type MeasuredSeries } from './quantity.ts'
import { stretchesOf, type Stretch } from './stretches.ts'

/** A prediction from a noisy current walks away: it begins anew after this, s. */
const pieceSeconds = 10
/** Span over which a current is compared: a shorter one drowns in the noise of the speeds at its ends, s. */
const meanSeconds = 5

/**
 * Without a duty the circuit says nothing. Speed is predicted from the current, in pieces of ten seconds from the speed
 * at each start; the mean current of five seconds from the speeds at their ends.
 *
 * m_e (1 − i)(v_2 − v_1) = ∫(F_m − R) dt, solved for the mean of I.
 *
 * *Source:* Newton's law, integrated; as in R. A. White and H. H. Korst, SAE 720099.
 */
export function byAmps({ tracks, noise }: Prepared, nominal: Machine): Comparison {
  const motion = new Motion(nominal, true)
  const takes = (track: Track) => (row: number) =>
    !Number.isNaN(track.speed[row]) && !Number.isNaN(track.amps[row])
  const pieces = tracks.flatMap((track) => stretchesOf(track, takes(track), pieceSeconds))
  const spans = tracks
    .flatMap((track) => stretchesOf(track, takes(track), meanSeconds))
    .filter((one) => drives(motion, one))
  const sigmaSpeed = angularSpeedOf(noise.get('motorRpm')?.sigma ?? 0) / motion.motorPerBelt
  const sigmaAmps = noise.get('motorAmps')?.sigma ?? 0
  const sigmas = pieces.map((piece) => sigmasOf(motion, piece, sigmaSpeed, sigmaAmps))
  return {
    series: [
      speedsOf(motion, pieces, sigmas),
      groundOf(motion, pieces, sigmas, groundNoiseOf(tracks)),
      currentsOf(motion, spans, sigmaSpeed, sigmaAmps),
    ],
    predictedBy: (machine) => {
      const other = new Motion(machine, true)
      const speeds = pieces.map(({ track, rows }) => beltCourse(other, track, rows, true))
      const ratio = other.motorPerBelt / motion.motorPerBelt
      return [
        Float64Array.from(speeds.flatMap((belt) => Array.from(belt, (one) => one * ratio))),
        Float64Array.from(
          pieces.flatMap(({ track, rows }, at) =>
            rows.flatMap((row, place) =>
              showsGround(track, row) ? [(speeds[at]?.[place] ?? NaN) * other.grip] : [],
            ),
          ),
        ),
        Float64Array.from(spans, (span) => balanced(other, span)),
      ]
    },
  }
}

/** Slower than this the ground's resistance is not the rolling one, m/s. */
const slowest = 0.3

/** Whether the motors push all through a span, and the ground holds what they push: only then the balance is the model's. */
function drives(motion: Motion, { track, rows }: Stretch): boolean {
  return rows.every((row) => {
    const belt = (track.speed[row] ?? 0) / motion.motorPerBelt
    const force = motion.forceOf(track.amps[row] ?? NaN, track.winding[row] ?? NaN, belt)
    return belt > slowest && force > 0 && force <= motion.mostThrust
  })
}

/**
 * Standard deviations through a piece: of the speed and its start, and what noisy amps have walked up to there.
 *
 * W = Σ(∂a/∂I)² Δt² (σ_I² + ΔI²/12).
 */
function sigmasOf(motion: Motion, piece: Stretch, sigmaSpeed: number, sigmaAmps: number): readonly number[] {
  const { track, rows } = piece
  const perAmp = motion.thrustPerAmp / motion.massOf(track.offGround)
  let walked = 0
  return rows.map((row, place) => {
    const before = rows[place - 1]
    if (before !== undefined) {
      const step = (track.seconds[row] ?? 0) - (track.seconds[before] ?? 0)
      const change = (track.amps[row] ?? 0) - (track.amps[before] ?? 0)
      walked += (perAmp * step) ** 2 * (sigmaAmps ** 2 + change ** 2 / 12)
    }
    const moving = betweenRows(track.speed, piece, place) / motion.motorPerBelt
    return Math.sqrt(2 * sigmaSpeed ** 2 + moving ** 2 + walked)
  })
}

type Sigmas = readonly (readonly number[])[]

function speedsOf(motion: Motion, pieces: readonly Stretch[], sigmas: Sigmas): MeasuredSeries {
  const found = new Samples()
  pieces.forEach(({ track, rows }, piece) =>
    rows.forEach((row, place) => {
      const belt = (track.speed[row] ?? NaN) / motion.motorPerBelt
      found.add(track.segment, track.seconds[row] ?? NaN, belt, sigmas[piece]?.[place] ?? NaN, belt)
    }),
  )
  return found.as('speed')
}

function groundOf(motion: Motion, pieces: readonly Stretch[], sigmas: Sigmas, sigma: number): MeasuredSeries {
  const found = new Samples()
  pieces.forEach(({ track, rows }, piece) =>
    rows.forEach((row, place) => {
      if (!showsGround(track, row)) return
      const own = Math.hypot(sigma, sigmas[piece]?.[place] ?? NaN)
      const belt = (track.speed[row] ?? NaN) / motion.motorPerBelt
      found.add(track.segment, track.seconds[row] ?? NaN, track.ground[row] ?? NaN, own, belt)
    }),
  )
  return found.as('groundSpeed')
}

/** Trapezoid over the rows of a span, over its time. */
function meanOf({ track, rows }: Stretch, value: (row: number) => number): number {
  let sum = 0
  for (let place = 1; place < rows.length; place += 1) {
    const [from = 0, to = 0] = [rows[place - 1], rows[place]]
    sum += (((track.seconds[to] ?? 0) - (track.seconds[from] ?? 0)) * (value(from) + value(to))) / 2
  }
  return sum / lengthOf({ track, rows })
}

const lengthOf = ({ track, rows }: Stretch) =>
  (track.seconds[rows.at(-1) ?? 0] ?? 0) - (track.seconds[rows[0] ?? 0] ?? 0)

function currentsOf(
  motion: Motion,
  spans: readonly Stretch[],
  sigmaSpeed: number,
  sigmaAmps: number,
): MeasuredSeries {
  const found = new Samples()
  for (const span of spans) {
    const { track, rows } = span
    const seconds = lengthOf(span)
    const bySpeed = (motion.massOf(track.offGround) * Math.SQRT2 * sigmaSpeed) / seconds / motion.thrustPerAmp
    const middle = ((track.seconds[rows[0] ?? 0] ?? 0) + (track.seconds[rows.at(-1) ?? 0] ?? 0)) / 2
    const measured = meanOf(span, (row) => track.amps[row] ?? NaN)
    const belt = meanOf(span, (row) => track.speed[row] ?? NaN) / motion.motorPerBelt
    const sigma = Math.hypot(bySpeed, sigmaAmps / Math.sqrt(rows.length))
    found.add(track.segment, middle, measured, sigma, belt)
  }
  return found.as('amps')
}

/** Mean amps of one motor that a span's speeds ask for. */
function balanced(motion: Motion, span: Stretch): number {
  const { track, rows } = span
  const belt = (row: number) => (track.speed[row] ?? NaN) / motion.motorPerBelt
  const gained = belt(rows.at(-1) ?? 0) - belt(rows[0] ?? 0)
  const needed = (motion.massOf(track.offGround) * gained) / lengthOf(span)
  const held = meanOf(span, (row) => motion.resistanceOf(belt(row), track.offGround))
  // While the motors push, force is a straight line in the current: two points of it far up.
  const pushedBy = (amps: number) =>
    meanOf(span, (row) => motion.forceOf(amps, track.winding[row] ?? NaN, belt(row)))
  const [half, most] = [1e3, 2e3]
  const perAmp = (pushedBy(most) - pushedBy(half)) / (most - half)
  return half + (needed + held - pushedBy(half)) / perAmp
}
