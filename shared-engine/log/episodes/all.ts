import type { LogData } from '../data.ts'
import type { Currents } from '../derive/current.ts'
import { LoadSignal } from '../derive/load-signal.ts'
import type { LogModel } from '../model.ts'
import type { InPieces } from '../pieces.ts'
import { canTellCutOff, cutOffEpisodes } from './cut-off.ts'
import { inOrder, type Episode } from './episode.ts'
import { limitEpisodes } from './limits.ts'
import { judgeLoad } from './load-lost.ts'
import { risesOf, spinEpisode } from './spin.ts'
import { signalEpisodes } from './signal.ts'
import { canTellStall, standstillEpisodes } from './standstill.ts'

/** Which episodes a log can tell of at all. */
export interface Judged {
  readonly loadLost: boolean
  readonly stall: boolean
  readonly cutOff: boolean
}

/** Everything that happened. */
interface Story {
  readonly episodes: readonly Episode[]
  readonly judged: Judged
}

/**
 * Finds every episode of a log.
 *
 * @param frozen, zeros rows left out because the signal was gone
 */
export function* storyOf(
  data: LogData,
  model: LogModel,
  currents: Currents,
  frozen: readonly number[],
  zeros: readonly number[],
): InPieces<Story> {
  const plain = [...limitEpisodes(data, model), ...signalEpisodes(data.timeline, frozen, zeros)]
  const rpm = data.channels.get('rpm')
  if (rpm === undefined) {
    return { episodes: inOrder(plain), judged: { loadLost: false, stall: false, cutOff: false } }
  }
  yield
  const signal = new LoadSignal(data, model, currents, rpm)
  yield* signal.work()
  yield
  const rises = risesOf(signal)
  yield
  const verdicts = segmentPlaces(rpm.samples, data).map(([from, to]) =>
    judgeLoad(data, signal, from, to, rises),
  )
  yield
  const losses = verdicts.flatMap(({ episode, lastCarried }) =>
    episode === null ? [] : [{ episode, lastCarried }],
  )
  const isLater = (first: number) =>
    losses.some(
      ({ episode, lastCarried }) =>
        first > lastCarried && data.timeline.segmentOf[rpm.samples[first] ?? 0] === episode.segment - 1,
    )
  const spins = rises.filter(({ first }) => !isLater(first)).map((rise) => spinEpisode(signal, rise))
  const standing = standstillEpisodes(data, signal)
  yield
  const episodes = [
    ...plain,
    ...spins,
    ...losses.map(({ episode }) => episode),
    ...standing,
    ...cutOffEpisodes(data, signal),
  ]
  const judged = {
    loadLost: verdicts.some((verdict) => verdict.judged),
    stall: canTellStall(data, signal),
    cutOff: canTellCutOff(data),
  }
  return { episodes: inOrder(episodes), judged }
}

/** First and last place of each segment's rpm samples, where it has any. */
function segmentPlaces(samples: Int32Array, { timeline }: LogData): readonly (readonly [number, number])[] {
  const places: [number, number][] = []
  let from = 0
  for (const { end } of timeline.segments) {
    let to = from
    while (to < samples.length && (samples[to] ?? 0) < end) to += 1
    if (to > from) places.push([from, to - 1])
    from = to
  }
  return places
}
