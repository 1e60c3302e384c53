import { formatText } from '../../units/display.ts'
import type { QuantityKind, UnitSystem } from '../../units/kinds.ts'
import type { BeforeLoss, Episode, Peak } from '../episodes/episode.ts'
import type { LogFacts } from '../facts/facts.ts'

/** What a sentence needs besides its episode. */
interface Telling {
  readonly system: UnitSystem
  /** A of one step of the volts, where the current was told from the sag. */
  readonly sagStepAmps: number | null
  readonly segments: number
}

/** How a log's episodes are told in metric units. */
export function tellingOf(facts: LogFacts, segments: number, system: UnitSystem = 'metric'): Telling {
  return { system, sagStepAmps: facts.sagStepAmps, segments }
}

/** A moment of a log, to the tenth of a second; to the hundredth where ends lie close. */
const moment = (seconds: number, digits = 1) => `${seconds.toFixed(digits)}\u202Fs`

const peakKinds: Readonly<Record<Peak['unit'], QuantityKind>> = {
  rpm: 'rpm',
  V: 'volts',
  A: 'amps',
  degC: 'temperature',
}

/**
 * An episode in one sentence or two: when, what, how far.
 *
 * @example 'From 10.5 s to 15.5 s the motor turned faster than its limit of 3,200 rpm: 3,410 rpm at 14.5 s.'
 */
export function sentenceOf(episode: Episode, telling: Telling): string {
  const where = telling.segments > 1 ? `Segment ${episode.segment}: ` : ''
  return (
    where +
    (episode.before === undefined
      ? plainSentence(episode, telling)
      : lossSentence(episode, episode.before, telling))
  )
}

function plainSentence(episode: Episode, telling: Telling): string {
  if (episode.kind === 'spin') return spinSentence(episode, telling)
  const when = `from ${moment(episode.start)} to ${moment(episode.end)}`
  const { peak } = episode
  const reached = peak === null ? '' : `: ${shownPeak(peak, telling.system)} at ${moment(peak.t)}`
  return `${capital(when)} ${happening(episode, telling)}${reached}.`
}

/** When it can have spun, why that is known, and how long the rpm stayed up. */
function spinSentence({ start, end, peak, spunUntil = end }: Episode, { system }: Telling): string {
  const reached = peak === null ? '' : `: ${shownPeak(peak, system)} at ${moment(peak.t)}`
  return `From ${moment(start)} on the track spun, or left the ground, until ${moment(spunUntil)} at the latest: the rpm rose faster than the loaded machine can be accelerated. It stayed up until ${moment(end)}${reached}.`
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

const shownPeak = ({ value, unit }: Peak, system: UnitSystem) => formatText(value, peakKinds[unit], system)

const lostWords = {
  gap: 'no rows came',
  frozen: 'every row repeated the one before',
  zeros: 'every cell was zero',
} as const

const causeWords = {
  volts: 'the pack was near its floor',
  temperature: 'a temperature was near its limit',
} as const

const heated: Readonly<Record<string, string>> = {
  motorC: 'the motor’s sensor',
  controllerC: 'the controller',
}

function happening({ kind, limit, channel, how, cause }: Episode, { system }: Telling): string {
  const bound = (quantity: QuantityKind) => formatText(limit, quantity, system)
  switch (kind) {
    case 'over-rev':
      return `the motor turned faster than its limit of ${bound('rpm')}`
    case 'sag':
      return channel === 'cellVolts'
        ? `the lowest cell was below its floor of ${bound('volts')}`
        : `the pack was below its floor of ${bound('volts')}`
    case 'over-temperature':
      return `${heated[channel ?? ''] ?? 'a sensor'} was hotter than its limit of ${bound('temperature')}`
    case 'signal-lost':
      return `there was no signal: ${lostWords[how ?? 'gap']}`
    case 'jam':
      return 'the motor stood still under power right after running, a jam'
    case 'stall':
      return 'the motor stood still under power'
    case 'cut-off':
      return `the throttle was open but next to no current flowed while the motor slowed, a cut-off; ${
        cause === null || cause === undefined ? 'the log does not show why' : causeWords[cause]
      }`
    default:
      return 'something happened'
  }
}

const sourceWords: Readonly<Record<string, string>> = {
  motorAmps: 'as logged',
  'amps+duty': 'from the pack’s amps and the duty',
  amps: 'from the pack’s amps',
  sag: 'from the sag of the volts',
}

/** Between which moments, what, rpm, amps with step and source, tooth force, tension, what came after, the limit. */
function lossSentence({ peak, source, peakAtMost }: Episode, before: BeforeLoss, telling: Telling): string {
  const { system, sagStepAmps } = telling
  const between = (pair: readonly [number, number] | null, kind: QuantityKind) =>
    pair === null
      ? null
      : `${formatText(Math.max(0, pair[0]), kind, system)} to ${formatText(pair[1], kind, system)}`
  const tooth = between(before.toothN, 'force')
  const tension = between(before.loopTensionN, 'force')
  const step = sagStepAmps === null ? '' : `, in steps of ${formatText(sagStepAmps, 'amps', system)}`
  const amps =
    before.motorAmps === null
      ? ''
      : `, ${formatText(before.motorAmps, 'amps', system)} of one motor (${sourceWords[source ?? ''] ?? 'as logged'}${step})`
  const forces =
    tooth === null || tension === null ? '' : `, ${tooth} on a tooth, ${tension} of tension in each loop`
  const least = formatText(before.rpm[0], 'rpm', system)
  const most = formatText(before.rpm[1], 'rpm', system)
  const turned = least === most ? `at ${most}` : `at ${least} to ${most}`
  const after =
    peak === null
      ? ''
      : ` It then turned free, up to ${shownPeak(peak, system)} at ${moment(peak.t)}${
          peakAtMost === null || peakAtMost === undefined
            ? ''
            : `, between samples at most ${formatText(peakAtMost, 'rpm', system)}`
        }.`
  return `Between ${moment(before.from, 2)} and ${moment(before.to, 2)} the load went (track, belt or chain off, a shaft or key sheared): ${turned}${amps}${forces}.${after}${ratedPart(before.ratedPassedSecondsBefore)}`
}

function ratedPart(seconds: number | null): string {
  if (seconds === null) return ''
  return seconds >= 0
    ? ` The motor’s limit of rpm had first been passed ${moment(seconds)} before.`
    : ` The motor’s limit of rpm was passed ${moment(-seconds)} after.`
}

/** The episode with its sentence. */
export function sentenced(episode: Episode, telling: Telling): Episode {
  return { ...episode, sentence: sentenceOf(episode, telling) }
}
