import type { Channel } from '../channel.ts'
import type { Episode, EpisodeKind, Peak } from './episode.ts'

/** What an episode adds to its place in time. */
type EpisodeRest = Partial<
  Omit<Episode, 'kind' | 'segment' | 'row' | 'start' | 'end' | 'startAfter' | 'endBefore'>
>

/**
 * An episode between two samples of a channel.
 *
 * @param first, last places among the channel's samples
 */
export function episodeOf(
  kind: EpisodeKind,
  channel: Channel,
  first: number,
  last: number,
  rest: EpisodeRest,
): Episode {
  const { samples, timeline } = channel
  const row = samples[first] ?? 0
  const segment = timeline.segmentOf[row] ?? 0
  const beside = (place: number): number | null => {
    const at = samples[place]
    return at !== undefined && timeline.segmentOf[at] === segment ? (timeline.t[at] ?? null) : null
  }
  return {
    kind,
    segment: segment + 1,
    row: timeline.lines[row] ?? 0,
    start: timeline.t[row] ?? 0,
    end: timeline.t[samples[last] ?? 0] ?? 0,
    startAfter: beside(first - 1),
    endBefore: beside(last + 1),
    peak: null,
    limit: null,
    over: false,
    sentence: '',
    ...rest,
  }
}

/** Whether a sample follows the one before without a break. */
export function follows({ samples, timeline, reach }: Channel, place: number): boolean {
  const row = samples[place]
  const before = samples[place - 1]
  if (row === undefined || before === undefined) return false
  if (timeline.segmentOf[row] !== timeline.segmentOf[before]) return false
  return (timeline.t[row] ?? NaN) - (timeline.t[before] ?? NaN) <= reach
}

/** The largest value between two places of a channel, the first of equals; the least with `sign` −1. */
export function peakOf(
  channel: Channel,
  first: number,
  last: number,
  unit: Peak['unit'],
  sign: 1 | -1 = 1,
): Peak {
  const { samples, timeline, values } = channel
  let best = first
  for (let place = first + 1; place <= last; place += 1) {
    const value = values[samples[place] ?? 0] ?? NaN
    if (sign * value > sign * (values[samples[best] ?? 0] ?? NaN)) best = place
  }
  const row = samples[best] ?? 0
  return { value: values[row] ?? NaN, t: timeline.t[row] ?? NaN, unit }
}
