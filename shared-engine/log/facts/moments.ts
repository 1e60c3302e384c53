import type { Channel } from '../channel.ts'
import type { ChannelId } from '../../reference/columns.ts'
import type { LogData } from '../data.ts'
import type { Currents } from '../derive/current.ts'
import { LoggedLoad, type Loads } from '../derive/loads.ts'

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
export function mostOf(data: LogData, currents: Currents, loads: Loads): Most {
  const rpm = data.channels.get('rpm')
  const found = new LoggedLoad()
  // value and row of the most of each, in the order of the names
  const values = new Float64Array(5).fill(-Infinity)
  const rows = new Int32Array(5)
  const offer = (which: number, value: number, row: number) => {
    if (!(value > (values[which] ?? Infinity))) return
    values[which] = value
    rows[which] = row
  }
  rpm?.samples.forEach((row, place) => {
    const amps = currents.motor[place] ?? NaN
    if (Number.isNaN(amps)) return
    loads.set(found, amps, rpm.values[row] ?? NaN)
    offer(0, amps, row)
    offer(1, found.torque, row)
    offer(2, found.forcePerLoop, row)
    offer(3, found.tension, row)
    offer(4, found.tooth, row)
  })
  const most = (which: number) => {
    const value = values[which] ?? -Infinity
    return value === -Infinity ? null : momentOf(data, rows[which] ?? 0, value)
  }
  return {
    motorAmps: most(0),
    torqueNm: most(1),
    forcePerLoopN: most(2),
    loopTensionN: most(3),
    toothN: most(4),
  }
}
