import type { Channel } from '../channel.ts'
import type { LogData } from '../data.ts'
import type { LoadSignal } from '../derive/load-signal.ts'
import type { Episode } from './episode.ts'
import { episodeOf, follows } from './sampled.ts'

const openThrottle = 0.3
const leastSeconds = 0.5
const causeSeconds = 3

/** Whether a log can tell of a controller that cuts off: it needs the throttle and a current that was logged. */
export function canTellCutOff({ channels }: LogData): boolean {
  return channels.has('throttle') && (channels.has('amps') || channels.has('motorAmps'))
}

/**
 * Moments at which the throttle was open but next to no current flowed while the motor slowed: the controller cut off.
 *
 * The cause is told where the volts were at the floor, or a temperature near its limit, within 3 s before.
 *
 * *Source:* common practice, no source.
 */
export function cutOffEpisodes(data: LogData, signal: LoadSignal): readonly Episode[] {
  if (!canTellCutOff(data)) return []
  const { rpm, model } = signal
  const throttle = data.channels.get('throttle')
  const isCut = (place: number) =>
    (throttle?.at(rpm.samples[place] ?? 0) ?? NaN) >= openThrottle &&
    (signal.x[place] ?? NaN) <= 0.4 * (signal.free[place] ?? NaN)
  const episodes: Episode[] = []
  for (let first = 0; first < rpm.samples.length; first += 1) {
    if (!isCut(first)) continue
    let last = first
    while (follows(rpm, last + 1) && isCut(last + 1)) last += 1
    const ends = signal.rpmAt(last)
    const slowed = ends <= 0.8 * signal.rpmAt(first) || ends <= 0.02 * model.freeRpm
    if (last > first && slowed && signal.timeAt(last) - signal.timeAt(first) >= leastSeconds) {
      episodes.push(episodeOf('cut-off', rpm, first, last, { cause: causeOf(data, signal, first) }))
    }
    first = last
  }
  return episodes
}

function causeOf(data: LogData, signal: LoadSignal, first: number): 'volts' | 'temperature' | null {
  const { machine } = signal.model
  const row = signal.rpm.samples[first] ?? 0
  const any = (channel: Channel | undefined, test: (value: number) => boolean) =>
    channel !== undefined && recent(channel, row).some(test)
  const floor = machine.pack.floorVolts
  if (
    any(data.channels.get('volts'), (value) => value <= 1.03 * floor) ||
    any(data.channels.get('cellVolts'), (value) => value <= (1.03 * floor) / machine.pack.series)
  )
    return 'volts'
  const limits = [
    ['motorC', machine.motor.maxTemperature],
    ['controllerC', machine.controller.maxTemperature],
  ] as const
  const hot = limits.some(
    ([id, limit]) => limit !== null && any(data.channels.get(id), (value) => value >= limit - 5),
  )
  return hot ? 'temperature' : null
}

/** Samples of a channel in the seconds before a row, and at it. */
function recent({ values, timeline }: Channel, row: number): number[] {
  const { t, segmentOf } = timeline
  const found: number[] = []
  for (let at = row; at >= 0 && segmentOf[at] === segmentOf[row]; at -= 1) {
    if ((t[row] ?? 0) - (t[at] ?? 0) > causeSeconds) break
    const value = values[at] ?? NaN
    if (!Number.isNaN(value)) found.push(value)
  }
  return found
}
