import type { Channel } from '../channel.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import type { Episode, EpisodeKind, Peak } from './episode.ts'
import { episodeOf, follows, peakOf } from './sampled.ts'

/** A limit that a channel may pass. */
interface WatchedLimit {
  readonly kind: EpisodeKind
  readonly channel: 'rpm' | 'volts' | 'cellVolts' | 'motorC' | 'controllerC'
  readonly limit: number | null
  /** 1: above is past it; −1: below. */
  readonly sign: 1 | -1
  /** Where it counts as over again. */
  readonly back: number
  readonly fewest: number
  readonly unit: Peak['unit']
}

/**
 * Passages of the limits that a log shows by itself: rated rpm until 2 % below it; the floor of the loaded volts until 2 %
 * above, two samples; temperatures until 3 K below, two samples.
 *
 * *Source:* limits of the build; hysteresis: common practice, no source.
 */
export function limitEpisodes(data: LogData, model: LogModel): readonly Episode[] {
  const { motor, pack, controller } = model.machine
  const floor = pack.floorVolts
  const heat = (channel: 'motorC' | 'controllerC', limit: number | null): WatchedLimit => ({
    kind: 'over-temperature',
    channel,
    limit,
    sign: 1,
    back: (limit ?? NaN) - 3,
    fewest: 2,
    unit: 'degC',
  })
  const rated = motor.ratedMaxRpm
  const low = { kind: 'sag', sign: -1, fewest: 2, unit: 'V' } as const
  const cell = floor / pack.series
  const watched: readonly WatchedLimit[] = [
    { kind: 'over-rev', channel: 'rpm', limit: rated, sign: 1, back: 0.98 * rated, fewest: 1, unit: 'rpm' },
    { ...low, channel: 'volts', limit: floor, back: 1.02 * floor },
    { ...low, channel: 'cellVolts', limit: cell, back: 1.02 * cell },
    heat('motorC', motor.maxTemperature),
    heat('controllerC', controller.maxTemperature),
  ]
  return watched.flatMap((one) => {
    const channel = data.channels.get(one.channel)
    return channel === undefined || one.limit === null ? [] : passagesOf(channel, one, one.limit)
  })
}

function passagesOf(channel: Channel, watched: WatchedLimit, limit: number): readonly Episode[] {
  const { samples, values } = channel
  const { sign, back, fewest, unit, kind } = watched
  const episodes: Episode[] = []
  const valueAt = (place: number) => values[samples[place] ?? 0] ?? NaN
  const isPast = (place: number) => sign * valueAt(place) > sign * limit
  for (let first = 0; first < samples.length; first += 1) {
    if (!isPast(first)) continue
    let last = first
    let past = 1
    let place = first + 1
    while (place < samples.length && follows(channel, place) && sign * valueAt(place) > sign * back) {
      if (isPast(place)) {
        last = place
        past += 1
      }
      place += 1
    }
    if (past >= fewest) {
      const peak = peakOf(channel, first, last, unit, sign)
      episodes.push(episodeOf(kind, channel, first, last, { peak, limit, over: true, channel: channel.id }))
    }
    first = place - 1
  }
  return episodes
}
