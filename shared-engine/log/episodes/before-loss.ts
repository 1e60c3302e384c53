import { ampsAt } from '../../motor/drive-line.ts'
import { referenceTemperature } from '../../motor/constants.ts'
import { freeSpeedAt } from '../../motor/free-speed.ts'
import { angularSpeedOf, rpmOf } from '../../units/rpm.ts'
import type { LogData } from '../data.ts'
import type { LoadSignal } from '../derive/load-signal.ts'
import { Loads } from '../derive/loads.ts'
import type { BeforeLoss } from './episode.ts'
import type { Window } from './windows.ts'

/** s before the loss from which a passage of the rated rpm is looked for. */
const lookBack = 60

/**
 * The moment before the load went, as far as a log can tell: what is between two samples is told by its ends.
 *
 * @param carried the last window that carried, up to its last loaded sample c
 * @param first, last places of the episode
 * *Source:* loads as `derive/loads.ts`; the shock factor on full throttle's force as in the build's service.
 */
export function beforeLoss(
  data: LogData,
  signal: LoadSignal,
  carried: Window,
  first: number,
  last: number,
): BeforeLoss {
  const c = carried.last
  const rpm = signal.rpmAt(c)
  const from = signal.timeAt(c)
  const to = signal.timeAt(first)
  const free = freeRpmAt(signal, c)
  const fastest = rpm + 1.5 * signal.rates.loaded(rpm) * (to - from)
  const most = Math.max(rpm, Number.isNaN(free) ? fastest : Math.min(free, fastest))
  const h = middleOf(signal, carried)
  const { currents } = signal
  return {
    from,
    to,
    rpm: [rpm, most],
    motorAmps: known(currents.motor[h]),
    packAmps: known(currents.pack[h]),
    volts: known(currents.volts[h]),
    ...forcesOf(signal, h, c),
    ratedPassedSecondsBefore: ratedPassed(data, signal, c, last),
  }
}

const known = (value: number | undefined) => (value === undefined || Number.isNaN(value) ? null : value)

/** The sample of middle current of a window: element ⌊n/2⌋ by current. */
function middleOf(signal: LoadSignal, { first, last }: Window): number {
  const places = Array.from({ length: last - first + 1 }, (_, index) => first + index)
  places.sort((one, other) => (signal.x[one] ?? NaN) - (signal.x[other] ?? NaN))
  return places[Math.floor(places.length / 2)] ?? last
}

/** Force at the middle sample, and the larger of it and full throttle's at c with the shock factor. */
function forcesOf(
  signal: LoadSignal,
  h: number,
  c: number,
): Pick<BeforeLoss, 'forcePerLoopN' | 'toothN' | 'loopTensionN'> {
  const { model, currents } = signal
  const loads = new Loads(model)
  const amps = currents.motor[h] ?? NaN
  if (Number.isNaN(amps)) return { forcePerLoopN: null, toothN: null, loopTensionN: null }
  const rpm = signal.rpmAt(c)
  const least = loads.forceOf(amps, signal.rpmAt(h))
  const full = loads.forceOf(ampsAt(model.drive, angularSpeedOf(rpm)), rpm)
  const most = Math.max(least, model.machine.service.factor * full)
  return {
    forcePerLoopN: [least, most],
    toothN: [loads.toothOf(least), loads.toothOf(most)],
    loopTensionN: [loads.tensionOf(least, rpm), loads.tensionOf(most, rpm)],
  }
}

/** Rpm that the motor reaches unloaded at the pack's resting volts then; NaN without volts. */
export function freeRpmAt(signal: LoadSignal, place: number): number {
  const { machine } = signal.model
  const { timeline, samples } = signal.rpm
  const segment = timeline.segmentOf[samples[place] ?? 0] ?? 0
  const rest = signal.currents.rest?.at(segment, signal.timeAt(place)) ?? NaN
  const at = (temperature: number) => freeSpeedAt(machine, rest, temperature, machine.controller.throttleCap)
  return rpmOf(Math.max(at(referenceTemperature), at(machine.motor.maxTemperature)))
}

/** s from the first passage of the rated rpm, up to a minute before, to the loss; null without one. */
function ratedPassed(data: LogData, signal: LoadSignal, c: number, last: number): number | null {
  const rated = signal.model.machine.motor.ratedMaxRpm
  const { segmentOf } = data.timeline
  const now = signal.timeAt(c)
  const { samples } = signal.rpm
  let first = c
  while (
    first > 0 &&
    segmentOf[samples[first - 1] ?? 0] === segmentOf[samples[c] ?? 0] &&
    now - signal.timeAt(first - 1) <= lookBack
  )
    first -= 1
  for (let place = first; place <= last; place += 1) {
    if (signal.rpmAt(place) > rated) return now - signal.timeAt(place)
  }
  return null
}
