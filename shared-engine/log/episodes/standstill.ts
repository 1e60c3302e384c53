import type { LogData } from '../data.ts'
import type { LoadSignal } from '../derive/load-signal.ts'
import type { Episode, Peak } from './episode.ts'
import { episodeOf, follows } from './sampled.ts'

const still = 0.02
const running = 0.1
const leastDuty = 0.15
const leastSeconds = 0.5

/** Whether a log can tell of a standing motor under power: a duty, a current, or volts fine enough. */
export function canTellStall(data: LogData, signal: LoadSignal): boolean {
  const { channels } = data
  if (['duty', 'throttle', 'amps', 'motorAmps'].some((id) => channels.has(id as 'duty'))) return true
  return 2 * signal.currents.sagStep <= stallPackAmps(signal, signal.model.checked.evaluation.restAmps)
}

/** Pack amps of a standing motor that draws so much, pack full: M I² R_s/V. *Source:* power balance, all of it copper. */
function stallPackAmps({ model }: LoadSignal, amps: number): number {
  const { drive, machine } = model
  return (drive.count * amps * amps * drive.seriesResistance) / machine.pack.fullVolts
}

/**
 * Standstills under power: a jam where the motor ran right before, else a stall.
 *
 * *Source:* standstill current from the engine; shares: common practice, no source.
 */
export function standstillEpisodes(data: LogData, signal: LoadSignal): readonly Episode[] {
  const powered = powerTest(data, signal)
  const { rpm, model } = signal
  const stands = (place: number) => Math.abs(signal.rpmAt(place)) <= still * model.freeRpm && powered(place)
  const episodes: Episode[] = []
  for (let first = 0; first < rpm.samples.length; first += 1) {
    if (!stands(first)) continue
    let last = first
    while (follows(rpm, last + 1) && stands(last + 1)) last += 1
    if (last > first && signal.timeAt(last) - signal.timeAt(first) >= leastSeconds) {
      const kind = ranBefore(signal, first) ? 'jam' : 'stall'
      episodes.push(episodeOf(kind, rpm, first, last, { peak: mostAmps(signal, first, last) }))
    }
    first = last
  }
  return episodes
}

function ranBefore(signal: LoadSignal, first: number): boolean {
  const { rpm, model } = signal
  const within = Math.max(1, Number.isNaN(rpm.step) ? 0 : 1.5 * rpm.step)
  const now = signal.timeAt(first)
  const segment = (place: number) => rpm.timeline.segmentOf[rpm.samples[place] ?? 0]
  for (let place = first - 1; place >= 0 && segment(place) === segment(first); place -= 1) {
    if (now - signal.timeAt(place) > within) return false
    if (signal.rpmAt(place) >= running * model.freeRpm) return true
  }
  return false
}

/** The most motor current between two samples; null where none is known. */
function mostAmps(signal: LoadSignal, first: number, last: number): Peak | null {
  let best = -1
  const amps = (place: number) => signal.currents.motor[place] ?? NaN
  for (let place = first; place <= last; place += 1) {
    if (!Number.isNaN(amps(place)) && (best < 0 || amps(place) > amps(best))) best = place
  }
  return best < 0 ? null : { value: amps(best), t: signal.timeAt(best), unit: 'A' }
}

/** Whether the motor is under power at a sample, by the best that was logged. */
function powerTest(data: LogData, signal: LoadSignal): (place: number) => boolean {
  const { model, currents } = signal
  const most = model.checked.evaluation.restAmps
  const set = data.channels.get('duty') ?? data.channels.get('throttle')
  const motorAt = (place: number) => currents.motor[place] ?? NaN
  const packAt = (place: number) => currents.pack[place] ?? NaN
  if (set === undefined) {
    if (currents.source === 'motorAmps') return (place) => motorAt(place) >= 0.3 * most
    const least = Math.max(
      0.3 * stallPackAmps(signal, most),
      currents.source === 'sag' ? 2 * currents.sagStep : 0,
    )
    return (place) => packAt(place) >= least
  }
  return (place) => {
    const duty = set.at(signal.rpm.samples[place] ?? 0)
    if (!(duty >= leastDuty)) return false
    const expected = Math.min(most, (duty * model.machine.pack.fullVolts) / model.drive.seriesResistance)
    if (currents.source === 'motorAmps') return motorAt(place) >= expected / 4
    if (currents.source === 'sag' || currents.source === null) return true
    return packAt(place) >= stallPackAmps(signal, expected) / 4
  }
}
