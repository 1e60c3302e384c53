import { fieldOf } from '../entries/fields.ts'
import type { BlockName, Tell } from './entries.ts'
import type { InAir } from './in-air.ts'
import type { ChannelName } from './log.ts'
import type { Lag } from './lags.ts'
import type { Refusal, RefusalCode } from './refuse.ts'
import { rounded } from '../measure/shown.ts'

/** What to drive so that a log tells more. */
const tellSentences: Readonly<Record<Tell, string>> = {
  'off-ground':
    'Rolling resistance and the loops’ drag hold the machine back with the same force. Lift it off, run the loops free for a while, and mark that stretch.',
  'slow-and-fast':
    'Drive a minute slowly and a minute fast, both evenly: what grows with speed shows only between the two.',
  fast: 'Drive at the most that the ground allows for a while: only there does the air hold it back.',
  coast: 'Let it roll out from speed several times, both ways, without brake.',
  'light-and-hard':
    'Drive with hardly any load and then hard, at several throttles: amps have to change by more than the sensor’s noise.',
  bursts: 'Draw hard for a second or two, then nothing, again and again: the pack’s sag has to come and go.',
  'long-and-cool':
    'Drive hard until the motor gets no warmer, then let it cool with the log running, for two time constants.',
  'ground-speed': 'Log the speed over ground beside the rpm, on a straight, above walking pace.',
}

const nameOf = (path: string) => fieldOf(path)?.label ?? path
const list = (paths: readonly string[]) => paths.map((path) => `${nameOf(path)} (${path})`).join(', ')

/** Behind the entry's name and path. */
const reasons: Readonly<Record<RefusalCode, (others: readonly string[]) => string>> = {
  'not-in-build': () => 'needs an entry of the build that is not there.',
  'no-channel': () => 'the log has no channel that tells it.',
  'no-effect': () => 'nothing in this log, or on this machine, depends on it.',
  together: (others) =>
    others.length === 0 ? 'this log cannot tell it.' : `this log cannot tell it from ${list(others)}.`,
  noise: (others) =>
    others.length === 0
      ? 'sensor noise is too large a part of what the channels say of it.'
      : `follows ${list(others)}, which this log’s sensor noise hides.`,
  alone: () => 'this log says too little of it: it could be off by more than half.',
  range: () => 'would come out outside what such an entry may be.',
  unsettled: () => 'the fit did not come to rest.',
}

/** A refusal in words, with the drive that would tell. */
export function refusalSentence(path: string, { code, with: others, tell }: Refusal): string {
  return `${nameOf(path)} (${path}): ${reasons[code](others)} ${tellSentences[tell]}`
}

/** A value that is offered, but not known well. */
export function roughSentence(path: string): string {
  return `${nameOf(path)} (${path}) is known to worse than a fifth; take it for now and drive again.`
}

type FitNoteCode = 'spin' | 'misses' | 'lag' | 'marked'

/** Something about the fit as a whole. */
export interface FitNote {
  readonly code: FitNoteCode
  /** A kind of residual, or a channel of the log. */
  readonly about: BlockName | ChannelName
  readonly sentence: string
}

export function lagNote({ channel, seconds, standardError }: Lag): FitNote {
  const [unit, times] = seconds < 1 ? ['ms', 1000] : ['s', 1]
  const { value, plusMinus } = rounded(times * seconds, 2 * times * standardError)
  const against = channel === 'motorCelsius' ? 'heat' : 'volts'
  return {
    code: 'lag',
    about: channel,
    sentence: `${channel}: comes ${value} ± ${plusMinus} ${unit} late against the ${against}. That was taken out first; its doubt is part of the errors.`,
  }
}

export function spinNote(pieces: number): FitNote {
  const what = pieces === 1 ? 'One piece' : `${pieces} pieces`
  return {
    code: 'spin',
    about: 'speed',
    sentence: `speed: ${what} of ten seconds left out, since the motors push harder there than the ground holds.`,
  }
}

export function markedNote(stretches: readonly Omit<InAir, 'segment'>[]): FitNote {
  const from = stretches.map(({ from, to }) => `${from.toFixed(1)} to ${to.toFixed(1)} s`).join(', ')
  return {
    code: 'marked',
    about: 'groundMps',
    sentence: `groundMps: from ${from} the log is marked as driven in the air, and yet the machine moves over ground. Where that mark is wrong, so is every value here: take none before it is right.`,
  }
}

export function missesNote(block: BlockName): FitNote {
  return {
    code: 'misses',
    about: block,
    sentence: `${block}: the model misses something that the log shows (a slope, snow, a lag between channels). The errors are those of whole pieces against each other; look at the residuals.`,
  }
}
