import { formatText } from '../units/display.ts'
import type { QuantityKind, UnitSystem } from '../units/kinds.ts'
import type { Alarm } from './alarms.ts'
import type { RpmGuard } from './guard.ts'

/** What an alarm's value comes from, and what it can guard, in a builder's words. */
interface AlarmWords {
  /** "95 % of the fastest that the motor may turn". */
  readonly from: string
  /** "guards", "can’t guard", or "in part": it guards, but not everything that its name promises. */
  readonly verdict: 'guards' | 'can’t guard' | 'in part'
  /** What it guards or why it can’t, and what to do then; a sentence or two. */
  readonly guards: string
}

/** Seconds without a signal after which the receiver shuts the throttle. *Source:* common practice, no source. */
export const signalLost = {
  id: 'signal-lost',
  label: 'Signal lost',
  seconds: 2,
  words:
    'Set the receiver to shut the throttle when it has had no signal for 2 s, and see that it does with the track off the ground.',
} as const

const rpmFrom: Readonly<Record<string, string>> = {
  'motor.free-rpm': '95\u202F% of the fastest that the motor may turn',
  'controller.electrical-rpm': '95\u202F% of the fastest that the controller follows',
  'track.burst-speed': '90\u202F% of where the loop’s own mass tears it',
  'track.lift-off-free': '95\u202F% of where the loop leaves its wheels',
}

/** "set the throttle cap to 62 % or less", rounded to the safe side; what else where full throttle stays below. */
function capWords({ capPercent }: RpmGuard): string {
  return capPercent === null || capPercent >= 100
    ? 'unloaded on the level full throttle alone stays below the limit, downhill it may not'
    : `set the throttle cap to ${Math.floor(capPercent * 10) / 10}\u202F% or less`
}

/** Two figures: nobody counts hundredths of a second. */
function roundText(value: number): string {
  return String(Number(value.toPrecision(2)))
}

function rpmWords(rpm: RpmGuard): Omit<AlarmWords, 'from'> {
  const { seconds, guards } = rpm
  if (seconds === null)
    return { verdict: 'guards', guards: 'Nothing pushes from the alarm to the limit, even off the ground.' }
  const left = `${roundText(seconds)}\u202Fs from the alarm to the limit, off the ground at full throttle`
  return guards
    ? { verdict: 'guards', guards: `${left}: time for a hand.` }
    : { verdict: 'can’t guard', guards: `An alarm can’t guard this: ${left}; ${capWords(rpm)}.` }
}

/** What each alarm but the ones on rpm comes from and guards. */
const others: Readonly<
  Record<string, (alarm: Alarm, show: (value: number, kind: QuantityKind) => string) => AlarmWords>
> = {
  'pack-volts': ({ ohm, voltsAtRms }, show) => ({
    from: 'volts at rest when the charge is at the reserve',
    verdict: 'guards',
    guards: `The reserve, where the radio adds volts and amps times ${show(ohm ?? 0, 'ohms')}${voltsAtRms === undefined ? '' : `; for one that can’t, set ${show(voltsAtRms, 'volts')}`}.`,
  }),
  'cell-volts': () => ({
    from: 'the same, for one cell',
    verdict: 'guards',
    guards: 'The weakest cell, where each is measured; the sag has to be added here too.',
  }),
  'charge-used': () => ({
    from: 'charge from the given one down to the reserve',
    verdict: 'in part',
    guards: 'The reserve of a pack that starts as full as given and holds what its label says.',
  }),
  controller: ({ earlier }, show) => ({
    from: 'the controller’s own limit',
    verdict: 'in part',
    guards:
      earlier === undefined
        ? 'It sounds at the limit itself and leaves no time before it; how much an earlier one would leave needs the controller’s heat capacity.'
        : `It sounds at the limit itself and leaves no time before it: set at ${show(earlier.value, 'temperature')} it leaves ${roundText(earlier.seconds)}\u202Fs or more in the strongest burst.`,
  }),
  coolant: () => ({
    from: '10\u202FK below where the coolant boils',
    verdict: 'in part',
    guards: 'Boiling; not a pump that stands still, which leaves the sensor cool.',
  }),
  'burst-seconds': () => ({
    from: 'how long the motor bears a jam or a pivot turn from its hottest moment',
    verdict: 'in part',
    guards: 'A timer on full throttle for the hand; no sensor sees it.',
  }),
  'motor-amps': () => currentWords,
  'pack-amps': () => currentWords,
}

const currentWords: AlarmWords = {
  from: 'the lowest rating for long',
  verdict: 'in part',
  guards: 'What lasts; a burst is over before it has lasted that long.',
}

function caseWords({ guards }: Alarm, burst: string | null): Omit<AlarmWords, 'from'> {
  if (guards === true)
    return {
      verdict: 'guards',
      guards: 'The case is past it before the winding is at its limit, in a jam and a pivot turn too.',
    }
  if (guards === undefined)
    return {
      verdict: 'in part',
      guards:
        'Slow warming. How far the case lags behind the winding in a burst is not known: enter the motor’s two nodes.',
    }
  const instead = burst === null ? 'keep bursts short' : `keep them under ${burst}`
  return {
    verdict: 'can’t guard',
    guards: `An alarm can’t guard bursts: the winding is at its limit while the case is still below this; ${instead}. It guards slow warming.`,
  }
}

/**
 * What an alarm comes from and what it can guard; null where it cannot be set.
 *
 * @param alarms the whole card: some point to others
 * *Source:* `docs/model.md` §12 for what is computed; the rest common practice, no source.
 */
export function alarmWords(alarm: Alarm, alarms: readonly Alarm[], system: UnitSystem): AlarmWords | null {
  if (alarm.value === null) return null
  const rpm = alarms.find((one) => one.rpm !== undefined)?.rpm
  if (alarm.kind === 'rpm') {
    if (rpm === undefined) return null
    if (alarm.rpm === undefined)
      return { from: 'the rpm above, times the pole pairs', ...rpmWords(rpm), guards: 'As the rpm above.' }
    return { from: rpmFrom[rpm.from] ?? rpm.from, ...rpmWords(rpm) }
  }
  if (alarm.id === 'case') {
    const burst = alarms.find(({ id }) => id === 'burst-seconds')?.value ?? null
    const words = burst === null ? null : `${roundText(burst)}\u202Fs`
    return { from: '90\u202F% of the case’s rise when the motor is at its limit', ...caseWords(alarm, words) }
  }
  return others[alarm.id]?.(alarm, (value, kind) => formatText(value, kind, system)) ?? null
}
