import { kilo, secondsPerHour, secondsPerMinute } from '../../units/factors.ts'
import { groundSpeedOfRpm } from '../../vehicle/logged-speed.ts'
import type { Currents } from '../derive/current.ts'
import { trackOnUntil } from '../facts/facts.ts'
import type { Episode } from '../episodes/episode.ts'
import type { ReadLog } from '../read.ts'
import type { ChargeCourse } from './charge-course.ts'

/** What a stretch of a run is described by: means over it, SI, but °C, K a minute of warming, W·h for a kilometre. */
export type Measure =
  | 'speed'
  | 'acceleration'
  | 'packAmps'
  | 'motorAmps'
  | 'heatAmps'
  | 'watts'
  | 'consumption'
  | 'volts'
  | 'dutyVolts'
  | 'throttleVolts'
  | 'motorC'
  | 'controllerC'
  | 'motorWarming'
  | 'controllerWarming'
  | 'charge'

/** A stretch of a run; NaN where it lacks something. */
export interface Stretch {
  /** Rises by one from a stretch to the one that follows it at once. */
  readonly window: number
  readonly means: Readonly<Record<Measure, number>>
}

/** A log with what is worked out of it once. */
export interface Course {
  readonly log: ReadLog
  readonly episodes: readonly Episode[]
  readonly currents: Currents
  readonly charge: ChargeCourse
}

/** Least part of a stretch that samples have to cover. *Source:* common practice, no source. */
const leastCovered = 0.8

/** What is averaged over a stretch as it is at each rpm sample; the rest follows from these. */
const sampled = [
  'speed',
  'packAmps',
  'motorAmps',
  'watts',
  'volts',
  'dutyVolts',
  'throttleVolts',
  'motorC',
  'controllerC',
  'charge',
] as const
type Sampled = (typeof sampled)[number]

/** Sums of one quantity over a stretch. */
class Sum {
  value = 0
  seconds = 0
  /** Of the squares. */
  squares = 0
  /** Of the seconds from the stretch's middle, of the value times them, and of their squares: its slope. */
  aside = 0
  moment = 0
  spread = 0

  add(one: number, other: number, step: number, fromMiddle: number): void {
    const mean = (one + other) / 2
    if (Number.isNaN(mean)) return
    this.value += mean * step
    this.squares += mean * mean * step
    this.aside += fromMiddle * step
    this.moment += mean * fromMiddle * step
    this.spread += fromMiddle * fromMiddle * step
    this.seconds += step
  }

  /** NaN where too little of the stretch is known. */
  mean(length: number): number {
    return this.seconds >= leastCovered * length ? this.value / this.seconds : NaN
  }

  rootMeanSquare(length: number): number {
    return this.seconds >= leastCovered * length ? Math.sqrt(this.squares / this.seconds) : NaN
  }

  /** Change per second, by the least squares' line through all of it. */
  slope(length: number): number {
    if (this.seconds < leastCovered * length) return NaN
    const spread = this.spread - this.aside ** 2 / this.seconds
    return spread > 0 ? (this.moment - (this.aside * this.value) / this.seconds) / spread : NaN
  }
}

/**
 * Cuts a run into stretches of one length, up to where the load went.
 *
 * Means by the trapezoid over rpm samples near each other; rates by the least squares' line over a stretch.
 *
 * @param length s
 * @param bySensor take the ground speed of the log's own sensor, not the rpm's
 * *Source:* trapezoidal rule; the line's slope: any text on least squares.
 */
export function stretchesOf(course: Course, length: number, bySensor: boolean): readonly Stretch[] {
  const rpm = course.log.data.channels.get('rpm')
  if (rpm === undefined) return []
  const { samples, timeline, reach } = rpm
  const { t, segmentOf } = timeline
  const valueOf = samplerOf(course, bySensor)
  const until = trackOnUntil(course.episodes)
  const found: Stretch[] = []
  let sums = newSums()
  let [window, base, segment] = [-1, 0, -1]
  const close = () => {
    if (window >= 0) found.push({ window: base + window, means: meansOf(sums, length) })
    sums = newSums()
  }
  for (let place = 1; place < samples.length; place += 1) {
    const [row, before] = [samples[place] ?? 0, samples[place - 1] ?? 0]
    const here = segmentOf[row] ?? 0
    const [now, then] = [t[row] ?? 0, t[before] ?? 0]
    if (here !== segmentOf[before] || now - then > reach || now > until(here)) continue
    const middle = (now + then) / 2
    const next = Math.floor(middle / length)
    if (here !== segment || next !== window) {
      close()
      // One number is left out between segments, so that none follows the last of another.
      if (here !== segment) base += window + 2
      ;[segment, window] = [here, next]
    }
    for (const one of sampled)
      sums[one].add(valueOf(one, place - 1), valueOf(one, place), now - then, middle - (next + 0.5) * length)
  }
  close()
  return found
}

type Sums = Readonly<Record<Sampled, Sum>>

const newSums = (): Sums =>
  Object.fromEntries(sampled.map((one) => [one, new Sum()])) as unknown as Record<Sampled, Sum>

function meansOf(sums: Sums, length: number): Readonly<Record<Measure, number>> {
  const mean = Object.fromEntries(sampled.map((one) => [one, sums[one].mean(length)])) as Record<
    Sampled,
    number
  >
  return {
    ...mean,
    acceleration: sums.speed.slope(length),
    heatAmps: sums.motorAmps.rootMeanSquare(length),
    consumption: mean.speed > 0 ? ((mean.watts / mean.speed) * kilo) / secondsPerHour : NaN,
    motorWarming: secondsPerMinute * sums.motorC.slope(length),
    controllerWarming: secondsPerMinute * sums.controllerC.slope(length),
  }
}

/** The value of what is averaged, by place among the rpm samples. */
function samplerOf(
  { log, currents, charge }: Course,
  bySensor: boolean,
): (one: Sampled, place: number) => number {
  const { data, model } = log
  const { channels } = data
  const rpm = channels.get('rpm')
  const rowAt = (place: number) => rpm?.samples[place] ?? 0
  const logged = (id: 'speed' | 'amps' | 'duty' | 'throttle' | 'motorC' | 'controllerC') => {
    const channel = channels.get(id)
    return (place: number) => channel?.at(rowAt(place)) ?? NaN
  }
  const [amps, duty, throttle] = [logged('amps'), logged('duty'), logged('throttle')]
  const volts = (place: number) => currents.volts[place] ?? NaN
  const byRpm = (place: number) =>
    groundSpeedOfRpm(model.machine, rpm?.values[rowAt(place)] ?? NaN, model.slip)
  const readers: Readonly<Record<Sampled, (place: number) => number>> = {
    speed: bySensor ? logged('speed') : byRpm,
    packAmps: amps,
    motorAmps: (place) => currents.motor[place] ?? NaN,
    watts: (place) => amps(place) * volts(place),
    volts,
    dutyVolts: (place) => duty(place) * volts(place),
    throttleVolts: (place) => throttle(place) * volts(place),
    motorC: logged('motorC'),
    controllerC: logged('controllerC'),
    charge: (place) => charge.at(rowAt(place)),
  }
  return (one, place) => readers[one](place)
}
