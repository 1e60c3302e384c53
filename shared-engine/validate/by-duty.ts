import { noiseOf } from '../fit/noise.ts'
import type { Prepared, Track } from '../fit/prepare.ts'
import type { Machine } from '../machine/parts.ts'
import { angularSpeedOf } from '../units/rpm.ts'
import { ampsOnCourse, beltCourse } from './course.ts'
import { Motion } from './motion.ts'
import { Samples, type Comparison } from './quantity.ts'
import { stretchesOf, type Stretch } from './stretches.ts'

/** What a value may have changed by between two rows beside it: half a step of a straight line, as a standard deviation. */
export function betweenRows(column: Float64Array, { rows }: Stretch, place: number): number {
  const at = (beside: number) => column[rows[beside] ?? -1] ?? column[rows[place] ?? 0] ?? NaN
  return Math.abs(at(place + 1) - at(place - 1)) / 2 / Math.sqrt(12)
}

/** Change of the duty between two rows after which a current is between two states that no row shows. */
const jump = 0.05

/** Whether the duty stands still, or changes slowly, round a row: only there a sampled current says something. */
function isSettled({ duty }: Track, { rows }: Stretch, place: number): boolean {
  const at = (beside: number) => duty[rows[beside] ?? -1] ?? NaN
  return [-2, -1, 0].every((back) => !(Math.abs(at(place + back + 1) - at(place + back)) > jump))
}

/** Whether a row has a new value of a channel that is held between its samples. */
const isNew = (column: Float64Array, row: number) => column[row] !== column[row - 1]

/** Noise of the speed over ground, m/s, by its new values alone: held ones would hide it. */
export function groundNoiseOf(tracks: readonly Track[]): number {
  const columns = tracks.map(({ ground }) =>
    [...ground].filter((value, row) => !Number.isNaN(value) && isNew(ground, row)),
  )
  return columns.some(({ length }) => length > 0) ? noiseOf(columns).sigma : 0
}

/** Whether a sample is compared. */
export const showsGround = (track: Track, row: number) =>
  !track.offGround && !Number.isNaN(track.ground[row]) && isNew(track.ground, row)
const showsAmps = (stretch: Stretch, place: number) =>
  !Number.isNaN(stretch.track.amps[stretch.rows[place] ?? -1]) && isSettled(stretch.track, stretch, place)

/**
 * Speed and current predicted from volts and duty alone, stretch by stretch from the speed at its start: nothing that was
 * measured on the way corrects them.
 */
export function byDuty({ tracks, noise }: Prepared, nominal: Machine, feedsBack: boolean): Comparison {
  const motion = new Motion(nominal, feedsBack)
  const { motorPerBelt } = motion
  const stretches = tracks.flatMap((track) =>
    stretchesOf(
      track,
      (row) =>
        !Number.isNaN(track.speed[row]) && !Number.isNaN(track.volts[row]) && !Number.isNaN(track.duty[row]),
      Infinity,
    ),
  )
  const of = (name: 'motorRpm' | 'packVolts' | 'duty' | 'motorAmps') => noise.get(name)?.sigma ?? 0
  const groundSigma = groundNoiseOf(tracks)
  const speedSigma = angularSpeedOf(of('motorRpm')) / motorPerBelt
  const series = nominal.motor.resistance + nominal.controller.resistance
  /** What the noise of volts and duty would put into a current that nothing holds back. */
  const drivenSigma = ({ volts, duty }: Track, row: number) =>
    Math.hypot((volts[row] ?? 0) * of('duty'), (duty[row] ?? 0) * of('packVolts')) / series
  const [speed, ground, amps] = [new Samples(), new Samples(), new Samples()]
  for (const stretch of stretches)
    stretch.rows.forEach((row, place) => {
      const { track } = stretch
      const time = track.seconds[row] ?? NaN
      const belt = (track.speed[row] ?? NaN) / motorPerBelt
      const moving = Math.hypot(speedSigma, betweenRows(track.speed, stretch, place) / motorPerBelt)
      speed.add(track.segment, time, belt, moving, belt)
      if (showsGround(track, row))
        ground.add(track.segment, time, track.ground[row] ?? NaN, Math.hypot(groundSigma, moving), belt)
      if (!showsAmps(stretch, place)) return
      const changing = betweenRows(track.amps, stretch, place) || 0
      const sigma = Math.hypot(of('motorAmps'), drivenSigma(track, row), changing)
      amps.add(track.segment, time, track.amps[row] ?? NaN, sigma, belt)
    })
  return {
    series: [speed.as('speed'), ground.as('groundSpeed'), amps.as('amps')],
    predictedBy: (machine) => predicted(new Motion(machine, feedsBack), motorPerBelt, stretches),
  }
}

function predicted(motion: Motion, nominal: number, stretches: readonly Stretch[]): readonly Float64Array[] {
  const [speed, ground, amps]: [number[], number[], number[]] = [[], [], []]
  for (const stretch of stretches) {
    const { track, rows } = stretch
    const belt = beltCourse(motion, track, rows, false)
    rows.forEach((row, place) => {
      const here = belt[place] ?? NaN
      // The rpm is what was measured: as m/s it is shown by the build's own wheels, whatever the prediction's.
      speed.push((here * motion.motorPerBelt) / nominal)
      if (showsGround(track, row)) ground.push(here * motion.grip)
      if (showsAmps(stretch, place)) amps.push(ampsOnCourse(motion, track, row, here))
    })
  }
  return [speed, ground, amps].map((values) => Float64Array.from(values))
}
