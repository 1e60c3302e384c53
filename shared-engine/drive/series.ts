import { rpmOf } from '../units/rpm.ts'
import { place } from './drive.ts'
import { DrivePoint, setDrivePoint } from './point.ts'
import type { DriveSetting } from './setting.ts'
import type { Stretch } from './run.ts'

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
] as const

export type Channel = (typeof channels)[number]

/** One instant of a drive, recorded. */
export type DriveSample = Readonly<Record<Channel, number>>

/** Fills in a sample from a state. */
export function sampleAt(
  point: DrivePoint,
  setting: DriveSetting,
  { settled }: Pick<Stretch, 'settled'>,
  seconds: number,
  state: Float64Array,
): DriveSample {
  setDrivePoint(point, setting, settled, state)
  const { groundSpeed, thrust, motorSpeed, motorAmps, duty, slip } = point.state
  return {
    seconds,
    speed: groundSpeed,
    distance: state[place.distance] ?? 0,
    throttle: duty,
    motorRpm: rpmOf(motorSpeed),
    motorAmps,
    packAmps: point.packAmps,
    packVolts: point.packVolts,
    charge: point.charge,
    winding: state[place.winding] ?? 0,
    controller: state[place.controller] ?? 0,
    coolant: state[place.coolant] ?? 0,
    // What only friction holds at rest is no thrust.
    thrust: groundSpeed === 0 ? Math.max(0, thrust) : thrust,
    slip,
  }
}

/** A sample and the stretch that it is from. */
export interface PlacedSample {
  readonly sample: DriveSample
  readonly stretch: Stretch
}

/** Samples of a whole drive: every step's end, and as many between as make them no farther apart than `spacing`, s. */
export function samplesOf(
  setting: DriveSetting,
  stretches: readonly Stretch[],
  spacing: number,
): PlacedSample[] {
  const point = new DrivePoint()
  return stretches.flatMap((stretch) => {
    const { times, at } = stretch.run
    const wanted = times.flatMap((time, index) => {
      const before = times[index - 1] ?? time
      const parts = Math.max(1, Math.ceil((time - before) / spacing))
      return index === 0
        ? [time]
        : Array.from({ length: parts }, (_, part) => before + ((time - before) * (part + 1)) / parts)
    })
    return wanted.map((time) => ({ sample: sampleAt(point, setting, stretch, time, at(time)), stretch }))
  })
}

/** Channels whose peaks a plot may not lose; of volts the lowest. */
const kept = ['speed', 'motorRpm', 'motorAmps', 'packAmps', 'packVolts', 'winding', 'thrust', 'slip'] as const

/**
 * Some of the samples: of each of `columns` equal stretches of time the first and last, and where each of the main channels
 * is largest and smallest, so that no peak is lost.
 */
export function thinnedSamples(samples: readonly DriveSample[], columns: number): DriveSample[] {
  const last = samples.at(-1)?.seconds ?? 0
  const columnOf = ({ seconds }: DriveSample) => Math.floor((seconds / (last || 1)) * columns)
  const thinned: DriveSample[] = []
  for (let from = 0; from < samples.length;) {
    const column = columnOf(samples[from] as DriveSample)
    let to = from
    while (to < samples.length && columnOf(samples[to] as DriveSample) === column) to += 1
    thinned.push(...keptOf(samples.slice(from, to)))
    from = to
  }
  return thinned
}

function keptOf(samples: readonly DriveSample[]): DriveSample[] {
  const indices = new Set([0, samples.length - 1])
  for (const channel of kept) {
    const values = samples.map((sample) => sample[channel])
    let [least, most] = [0, 0]
    values.forEach((value, index) => {
      if (value < (values[least] ?? 0)) least = index
      if (value > (values[most] ?? 0)) most = index
    })
    if (values[most] !== values[least]) indices.add(least).add(most)
  }
  return [...indices].sort((one, other) => one - other).map((index) => samples[index] as DriveSample)
}
