import type { Channel } from '../channel.ts'
import type { ChannelId } from '../../reference/columns.ts'
import type { LogData } from '../data.ts'
import type { Currents } from '../derive/current.ts'
import type { LoadCourse } from '../derive/load-course.ts'

/** A value with its moment. */
export interface Moment {
  readonly value: number
  /** From 1. */
  readonly segment: number
  /** s in the segment. */
  readonly t: number
}

/** The moment of a row. */
export function momentOf({ timeline }: Pick<LogData, 'timeline'>, row: number, value: number): Moment {
  return { value, segment: (timeline.segmentOf[row] ?? 0) + 1, t: timeline.t[row] ?? 0 }
}

/** The largest of a channel, the first of equals; the least with `sign` −1. */
function extremeOf(channel: Channel, sign: 1 | -1): Moment | null {
  let best = -1
  for (const row of channel.samples) {
    if (best < 0 || sign * (channel.values[row] ?? NaN) > sign * (channel.values[best] ?? NaN)) best = row
  }
  return best < 0 ? null : momentOf(channel, best, channel.values[best] ?? NaN)
}

/** Channels whose largest value is told, under which name; and those whose least is. */
const largest: readonly ChannelId[] = [
  'rpm',
  'amps',
  'motorAmps',
  'motorC',
  'controllerC',
  'coolantC',
  'speed',
  'volts',
]
const least: readonly (readonly [ChannelId, string])[] = [
  ['volts', 'leastVolts'],
  ['cellVolts', 'leastCellVolts'],
]

/** Peaks of the logged channels, each with its moment. */
export function peaksOf(data: LogData): Readonly<Record<string, Moment>> {
  const peaks: Record<string, Moment> = {}
  const put = (name: string, id: ChannelId, sign: 1 | -1) => {
    const channel = data.channels.get(id)
    const found = channel === undefined ? null : extremeOf(channel, sign)
    if (found !== null) peaks[name] = found
  }
  for (const id of largest) put(id, id, 1)
  for (const [id, name] of least) put(name, id, -1)
  return peaks
}

/** Most of what was derived, each with its moment; null where it is not known. */
export interface Most {
  readonly motorAmps: Moment | null
  readonly torqueNm: Moment | null
  readonly forcePerLoopN: Moment | null
  readonly loopTensionN: Moment | null
  readonly toothN: Moment | null
}

/** The most of current, torque, force, tension and tooth force over a log. */
export function mostOf(data: LogData, currents: Currents, loads: LoadCourse): Most {
  const samples = data.channels.get('rpm')?.samples ?? new Int32Array()
  const most = (values: Float64Array) => {
    let best = -1
    let value = -Infinity
    for (let place = 0; place < values.length; place += 1) {
      const here = values[place] ?? NaN
      // past all numbers, where a person takes a sample of 1e200 as it was logged
      if (!(here > value && here < Infinity)) continue
      best = place
      value = here
    }
    return best < 0 ? null : momentOf(data, samples[best] ?? 0, value)
  }
  return {
    motorAmps: most(currents.motor),
    torqueNm: most(loads.torque),
    forcePerLoopN: most(loads.force),
    loopTensionN: most(loads.tension),
    toothN: most(loads.tooth),
  }
}
