import type { LogData } from '../data.ts'
import type { LoadSignal } from '../derive/load-signal.ts'
import { beforeLoss, freeRpmAt } from './before-loss.ts'
import type { Episode } from './episode.ts'
import { episodeOf, follows, peakOf } from './sampled.ts'
import type { Rise } from './spin.ts'
import { isFree, isLoaded, lastCarrying, meanOf, meanRpm, windowFrom, type Window } from './windows.ts'

/** What was found of a segment's load. */
interface LoadVerdict {
  /** A window in which the track carried: without one, nothing can be said. */
  readonly judged: boolean
  /** Place of the last sample that carried, c; −1 without. */
  readonly lastCarried: number
  readonly episode: Episode | null
}

const leastFreeSeconds = 0.6
const burstSeconds = 2
/** s further back from which resting volts hold. *Source:* common practice, no source. */
const lookFurther = 20

/**
 * Whether the load went for good: track, belt or chain off, a shaft or key sheared.
 *
 * After the last moment at which the track carried, the motor turns free for at least 0.6 s, having begun so at once
 * without slowing (a step), or in a burst that neither carrying nor spinning track allows; or it bursts twice.
 *
 * @param from, to places of the segment's rpm samples
 * @param rises of the whole log
 * *Source:* the levels are the machine's own; windows and shares: common practice, no source, chosen so that simulated
 * logs of slopes, ice and jumps raise no false alarm.
 */
export function judgeLoad(
  data: LogData,
  signal: LoadSignal,
  from: number,
  to: number,
  rises: readonly Rise[],
): LoadVerdict {
  const carrying = lastCarrying(signal, from, to)
  if (carrying === undefined) return { judged: false, lastCarried: -1, episode: null }
  let c = carrying.last
  while (!isLoaded(signal, c)) c -= 1
  const x = currentAfter(signal, c, to)
  const most = mostFree(signal, carrying)
  const free: Window[] = []
  for (let place = Math.max(from, c + 1); place <= to; place += 1) {
    const window = windowFrom(signal, place, to)
    if (window !== null && isFree(signal, window, x) && meanOf(x, window) <= most) free.push(window)
  }
  const bursts = rises.filter(({ first }) => first > c && first <= to && isBurst(signal, first, to, x))
  const stepped = isStep(data, signal, { ...carrying, last: c }, free[0], to)
  const lost =
    (secondsIn(signal, free) >= leastFreeSeconds && (stepped || bursts.length > 0)) || bursts.length >= 2
  if (!lost) return { judged: true, lastCarried: c, episode: null }
  const first = free[0]?.first ?? bursts[0]?.first ?? c + 1
  return {
    judged: true,
    lastCarried: c,
    episode: lossEpisode(data, signal, { ...carrying, last: c }, first, to),
  }
}

/**
 * The current after the last sample that carried. Told from the sag, it is told from the resting volts of that moment on,
 * and of some time before: those of a later one can be volts under load, where the machine has not stood for long, and the
 * current would seem to have gone.
 */
function currentAfter(signal: LoadSignal, c: number, to: number): Float64Array {
  const { currents, rpm, model } = signal
  if (currents.source !== 'sag') return signal.x
  const segment = rpm.timeline.segmentOf[rpm.samples[c] ?? 0] ?? 0
  const rest = currents.rest?.at(segment, signal.timeAt(c) - lookFurther) ?? NaN
  const x = new Float64Array(signal.x)
  for (let place = c + 1; place <= to; place += 1) {
    x[place] = Math.max(0, (rest - (currents.volts[place] ?? NaN)) / model.machine.pack.resistance)
  }
  return x
}

/**
 * The mean current up to which a window counts as free: told from the sag, it has to be a step of the volts below what was
 * carried, since less is not seen.
 */
function mostFree({ currents, x }: LoadSignal, carrying: Window): number {
  return currents.source === 'sag' ? meanOf(x, carrying) - currents.sagStep : Infinity
}

/** Time that free windows cover together, s. */
function secondsIn(signal: LoadSignal, windows: readonly Window[]): number {
  let seconds = 0
  let until = -Infinity
  for (const { first, last } of windows) {
    const end = signal.timeAt(last)
    seconds += Math.max(0, end - Math.max(until, signal.timeAt(first)))
    until = Math.max(until, end)
  }
  return seconds
}

/** The first free window follows c at once, well before the end, without slowing, at less than cruise, throttle held. */
function isStep(
  data: LogData,
  signal: LoadSignal,
  carried: Window,
  free: Window | undefined,
  to: number,
): boolean {
  if (free === undefined) return false
  const c = carried.last
  const soon = Math.max(1, Number.isNaN(signal.rpm.step) ? 0 : 2.5 * signal.rpm.step)
  const begun = signal.timeAt(free.first)
  if (begun - signal.timeAt(c) > soon || signal.timeAt(to) - begun < 3) return false
  const lastThree = { first: Math.max(carried.first, c - 2), last: c }
  if (meanRpm(signal, free) < meanRpm(signal, lastThree) - 0.003 * signal.model.freeRpm) return false
  if (!(meanOf(signal.threshold, free) <= 0.9 * meanOf(signal.cruise, free))) return false
  const throttle = data.channels.get('throttle')
  const at = (place: number) => throttle?.at(signal.rpm.samples[place] ?? 0) ?? NaN
  const moved = Math.abs(at(free.first) - at(c))
  return Number.isNaN(moved) || moved <= 0.05
}

/** A rise whose first two seconds draw no more than the threshold, where spinning would draw more. */
function isBurst(signal: LoadSignal, first: number, to: number, x: Float64Array): boolean {
  const places: number[] = []
  for (
    let place = first;
    place <= to && signal.timeAt(place) - signal.timeAt(first) <= burstSeconds;
    place += 1
  ) {
    if (signal.turns(place) && !Number.isNaN(signal.x[place] ?? NaN)) places.push(place)
  }
  if (places.length > 2) places.shift()
  if (places.length < 2) return false
  const sum = (values: Float64Array) => places.reduce((all, place) => all + (values[place] ?? NaN), 0)
  return sum(x) <= sum(signal.threshold) && sum(signal.threshold) <= sum(signal.spin)
}

function lossEpisode(data: LogData, signal: LoadSignal, carried: Window, first: number, to: number): Episode {
  let last = first
  while (last < to && signal.turns(last + 1) && follows(signal.rpm, last + 1)) last += 1
  const peak = peakOf(signal.rpm, first, to, 'rpm')
  const freeRpm = freeRpmAt(signal, carried.last)
  return episodeOf('load-lost', signal.rpm, first, last, {
    peak,
    over: true,
    before: beforeLoss(data, signal, carried, first, last),
    peakAtMost: Number.isNaN(freeRpm) ? null : Math.max(freeRpm, peak.value),
    source: signal.currents.source,
  })
}
