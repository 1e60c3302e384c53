import { rpmOf } from '../units/rpm.ts'
import { place } from './drive.ts'
import type { Moment } from './moment.ts'

/** What is recorded over time; SI, °C, rpm of the motor. A kink has two rows of the same moment. */
export const channels = [
  'seconds',
  'speed',
  'distance',
  'throttle',
  'motorRpm',
  'motorAmps',
  'packAmps',
  'packVolts',
  'charge',
  'winding',
  'controller',
  'coolant',
  'thrust',
  'slip',
  'case',
  'pack',
  'height',
] as const

export type Channel = (typeof channels)[number]

/** One instant of a drive, recorded. */
export type DriveSample = Readonly<Record<Channel, number>>

/** Samples one after the other in one run of numbers: some thousand steps make no garbage. */
export class SampleStore {
  readonly #values: number[] = []

  get length(): number {
    return this.#values.length / channels.length
  }

  /** Takes down an instant of straight travel. */
  add(seconds: number, state: Float64Array, moment: Moment): void {
    const { straight, beltSpeed, speed } = moment
    this.#values.push(
      seconds,
      speed,
      state[place.distance] as number,
      straight.duty,
      rpmOf(straight.motorSpeed),
      straight.amps,
      straight.packAmps,
      straight.packVolts,
      moment.charge,
      state[place.winding] as number,
      state[place.controller] as number,
      state[place.coolant] as number,
      moment.thrust,
      beltSpeed > speed ? 1 - speed / beltSpeed : 0,
      state[place.case] as number,
      state[place.packTemperature] as number,
      state[place.height] as number,
    )
  }

  /** One number of a sample. */
  at(sample: number, channel: number): number {
    return this.#values[sample * channels.length + channel] as number
  }

  /** A sample as an object. */
  sample(index: number): DriveSample {
    return Object.fromEntries(channels.map((name, at) => [name, this.at(index, at)])) as DriveSample
  }
}

/** Channels whose peaks a plot may not lose. */
const kept = channels.flatMap((name, at) =>
  ['seconds', 'distance', 'charge', 'height'].includes(name) ? [] : [at],
)

/**
 * Some of the samples: of each of `columns` equal stretches of time the first and last, and where each of the channels is
 * largest and smallest, so that no peak is lost.
 */
export function thinnedSamples(
  store: SampleStore,
  columns: number,
  also: ReadonlySet<number> = new Set(),
): DriveSample[] {
  const count = store.length
  if (count === 0) return []
  const last = store.at(count - 1, 0)
  const columnOf = (sample: number) => Math.floor((store.at(sample, 0) / (last || 1)) * columns)
  const thinned: DriveSample[] = []
  for (let from = 0; from < count;) {
    const column = columnOf(from)
    let to = from
    while (to < count && columnOf(to) === column) to += 1
    for (const index of keptOf(store, from, to, also)) thinned.push(store.sample(index))
    from = to
  }
  return thinned
}

function keptOf(store: SampleStore, from: number, to: number, also: ReadonlySet<number>): number[] {
  const indices = new Set([from, to - 1])
  for (const index of also) if (index >= from && index < to) indices.add(index)
  for (const channel of kept) {
    let [least, most] = [from, from]
    for (let sample = from; sample < to; sample += 1) {
      const value = store.at(sample, channel)
      if (value < store.at(least, channel)) least = sample
      if (value > store.at(most, channel)) most = sample
    }
    if (store.at(least, channel) !== store.at(most, channel)) indices.add(least).add(most)
  }
  return [...indices].sort((one, other) => one - other)
}
