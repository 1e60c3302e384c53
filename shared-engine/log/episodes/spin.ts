import type { LoadSignal } from '../derive/load-signal.ts'
import type { Episode } from './episode.ts'
import { episodeOf, follows, peakOf } from './sampled.ts'

/** A rise of rpm that a gripping, carrying track does not allow; places among the rpm samples. */
export interface Rise {
  readonly first: number
  readonly last: number
}

const riseShare = 0.1
const firstShare = 0.05
const steepness = 1.5

/**
 * Rises of rpm faster than the loaded machine can be accelerated: by a tenth of the free rpm within a second, at 1.5
 * times what motor and grip allow.
 *
 * A rise begins at the sample a twentieth of the free rpm up, and lasts to the last at half of what it rose.
 *
 * *Source:* Newton's law; shares: common practice, no source.
 */
export function risesOf(signal: LoadSignal): readonly Rise[] {
  const { samples } = signal.rpm
  const rises: Rise[] = []
  for (let base = 0; base < samples.length; base += 1) {
    if (!isSteep(signal, base)) continue
    const rise = riseFrom(signal, base)
    rises.push(rise)
    base = Math.max(base, rise.last)
  }
  return rises
}

function isSteep({ rpm, rates, model }: LoadSignal, base: number): boolean {
  const { samples, values, timeline } = rpm
  const within = Math.max(1, Number.isNaN(rpm.step) ? 0 : 1.5 * rpm.step)
  const row = samples[base] ?? 0
  const [begun, low] = [timeline.t[row] ?? NaN, values[row] ?? NaN]
  const enough = riseShare * model.freeRpm
  for (let place = base + 1; follows(rpm, place); place += 1) {
    const here = samples[place] ?? 0
    const seconds = (timeline.t[here] ?? NaN) - begun
    if (seconds > within) return false
    const up = (values[here] ?? NaN) - low
    // What the machine can do is worked out for the few rises that are high enough.
    if (up >= enough && up / seconds >= steepness * rates.loaded(low)) return true
  }
  return false
}

function riseFrom(signal: LoadSignal, base: number): Rise {
  const low = signal.rpmAt(base)
  let first = base + 1
  while (signal.rpmAt(first) < low + firstShare * signal.model.freeRpm) first += 1
  const before = signal.rpmAt(first - 1)
  let peak = signal.rpmAt(first)
  let last = first
  for (let place = first + 1; follows(signal.rpm, place); place += 1) {
    const value = signal.rpmAt(place)
    peak = Math.max(peak, value)
    if (!(value >= before + (peak - before) / 2)) break
    last = place
  }
  return { first, last }
}

/**
 * The latest moment until which the machine can have lagged behind its track: where the rpm is no more than what it had
 * before, and what grip and motor can have added since.
 *
 * *Source:* Newton's law; the rate as in {@link risesOf}.
 */
function caughtUpBy(signal: LoadSignal, { first, last }: Rise): number {
  let reached = signal.rpmAt(first - 1)
  for (let place = first; place <= last; place += 1) {
    const seconds = signal.timeAt(place) - signal.timeAt(place - 1)
    reached += signal.rates.loaded(reached) * seconds
    if (signal.rpmAt(place) <= reached) return signal.timeAt(place)
  }
  return signal.timeAt(last)
}

/** A rise as an episode of its own. */
export function spinEpisode(signal: LoadSignal, rise: Rise): Episode {
  const { first, last } = rise
  const peak = peakOf(signal.rpm, first, last, 'rpm')
  return episodeOf('spin', signal.rpm, first, last, { peak, spunUntil: caughtUpBy(signal, rise) })
}
