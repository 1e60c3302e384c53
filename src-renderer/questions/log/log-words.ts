import type { Episode, EpisodeKind } from '../../../shared-engine/log/episodes/episode.ts'
import type { AlarmVerdict } from '../../../shared-engine/log/facts/alarms.ts'
import type { ChannelId } from '../../../shared-engine/reference/columns.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { QuantityKind, UnitSystem } from '../../../shared-engine/units/kinds.ts'

/** What a column can mean, in words, in the order of a list of choice. */
export const channelLabels: Readonly<Record<ChannelId, string>> = {
  time: 'Time',
  date: 'Date',
  rpm: 'Motor rpm',
  erpm: 'Electrical rpm',
  wheelRpm: 'Sprocket rpm',
  volts: 'Pack volts',
  cellVolts: 'Volts of the lowest cell',
  amps: 'Pack current',
  motorAmps: 'Current of one motor',
  throttle: 'Throttle',
  duty: 'Duty',
  speed: 'Ground speed',
  motorC: 'Motor temperature',
  controllerC: 'Controller temperature',
  coolantC: 'Coolant temperature',
  charge: 'Charge used',
  energy: 'Energy used',
  event: 'Events',
  altitude: 'Altitude',
  accel: 'Acceleration',
}

/** The name of what happened, short enough for a plot. */
export const episodeNames: Readonly<Record<EpisodeKind, string>> = {
  'load-lost': 'Load lost',
  jam: 'Jam',
  'over-temperature': 'Too hot',
  'over-rev': 'Over-rev',
  sag: 'Sag',
  stall: 'Stall',
  'cut-off': 'Cut-off',
  spin: 'Spin',
  'signal-lost': 'No signal',
}

const gravest = Object.keys(episodeNames)

/** How far beyond its limit, as a share of it. */
const beyond = ({ peak, limit }: Episode) =>
  peak === null || limit === null || limit === 0 ? 0 : Math.abs(peak.value - limit) / Math.abs(limit)

/** Worst first: what passed a limit or broke, then by kind, by how far beyond its limit, by how long it lasted. */
export function worstFirst(episodes: readonly Episode[]): readonly Episode[] {
  return episodes.toSorted(
    (one, other) =>
      Number(other.over) - Number(one.over) ||
      gravest.indexOf(one.kind) - gravest.indexOf(other.kind) ||
      beyond(other) - beyond(one) ||
      other.end - other.start - (one.end - one.start),
  )
}

/** A sentence with one number to be set large. */
interface Told {
  readonly before: string
  readonly large: string
  readonly after: string
}

const peakKinds: Readonly<Record<string, QuantityKind>> = {
  rpm: 'rpm',
  V: 'volts',
  A: 'amps',
  degC: 'temperature',
}

const heated: Readonly<Record<string, string>> = { motorC: 'motor’s sensor', controllerC: 'controller' }

/** The worst that happened in one sentence. */
export function worstTold(episode: Episode, segments: number, system: UnitSystem): Told {
  const { kind, start, end, peak, limit, channel, before } = episode
  const where = segments > 1 ? ` of segment ${episode.segment}` : ''
  const at = (seconds: number) => `${seconds.toFixed(1)}\u202Fs${where}`
  const measure = peakKinds[peak?.unit ?? ''] ?? 'none'
  const reached = formatText(peak?.value ?? null, measure, system)
  const bound = formatText(limit, measure, system)
  const then = peak === null ? '' : ` at ${at(peak.t)}`
  const lasting = { large: `${(end - start).toFixed(1)}\u202Fs`, after: `, from ${at(start)} on.` }
  switch (kind) {
    case 'load-lost':
      return {
        before: `The load went between ${(before?.from ?? start).toFixed(2)}\u202Fs and `,
        large: `${(before?.to ?? start).toFixed(2)}\u202Fs`,
        after: `${where}: track, belt or chain off, or a shaft or key sheared.`,
      }
    case 'over-rev':
      return {
        before: 'The motor turned at up to ',
        large: reached,
        after: `${then}; its limit is ${bound}.`,
      }
    case 'over-temperature':
      return {
        before: `The ${heated[channel ?? ''] ?? 'sensor'} reached `,
        large: reached,
        after: `${then}; its limit is ${bound}.`,
      }
    case 'sag':
      return {
        before: channel === 'cellVolts' ? 'The lowest cell sagged to ' : 'The pack sagged to ',
        large: reached,
        after: `${then}; its floor is ${bound}.`,
      }
    case 'jam':
      return { before: 'The motor jammed: it stood still under power for ', ...lasting }
    case 'stall':
      return { before: 'The motor stood still under power for ', ...lasting }
    case 'cut-off':
      return { before: 'The drive cut off under an open throttle for ', ...lasting }
    case 'spin':
      return {
        before: 'No limit was passed; the track spun, or left the ground, at ',
        large: at(start),
        after: ': the rpm rose faster than the loaded machine can be accelerated.',
      }
    case 'signal-lost':
      return { before: 'There was no signal for ', ...lasting }
  }
}

const limitNames: Readonly<Record<string, string>> = {
  motorC: 'Motor temperature',
  controllerC: 'Controller temperature',
  coolantC: 'Coolant temperature',
  cellVolts: 'Volts of the lowest cell',
}

const beyondSeconds = (group: readonly Episode[]) =>
  group.reduce((sum, { start, end }) => sum + end - start, 0)

/** One limit that was passed: how often, when first, how far. */
interface PassedLimit {
  readonly label: string
  readonly limit: string
  readonly reached: string
  readonly times: number
  readonly first: string
  readonly seconds: string
  /** Of the time of the log. */
  readonly share: string
}

/** The limits that were passed, each once, in the order in which they were. */
export function limitsPassed(
  episodes: readonly Episode[],
  segments: number,
  system: UnitSystem,
  wholeSeconds: number,
): readonly PassedLimit[] {
  const groups = new Map<string, Episode[]>()
  for (const episode of episodes) {
    if (!episode.over || episode.limit === null || episode.peak === null) continue
    const key = `${episode.kind} ${episode.channel ?? ''}`
    groups.set(key, [...(groups.get(key) ?? []), episode])
  }
  return [...groups.values()].flatMap((group): PassedLimit[] => {
    const [first] = group
    const [worst] = worstFirst(group)
    if (first === undefined || worst === undefined) return []
    const kind = peakKinds[worst.peak?.unit ?? ''] ?? 'none'
    const usual =
      first.kind === 'over-rev' ? 'Motor rpm' : first.kind === 'sag' ? 'Pack volts' : 'Temperature'
    const where = segments > 1 ? ` of segment ${first.segment}` : ''
    return [
      {
        label: limitNames[first.channel ?? ''] ?? usual,
        limit: formatText(worst.limit, kind, system),
        reached: formatText(worst.peak?.value ?? null, kind, system),
        times: group.length,
        first: `${first.start.toFixed(1)}\u202Fs${where}`,
        seconds: `${beyondSeconds(group).toFixed(1)}\u202Fs`,
        share: `${((100 * beyondSeconds(group)) / wholeSeconds).toFixed(1)}\u202F%`,
      },
    ]
  })
}

/**
 * Which alarm would have spoken before the worst that happened, and how long before: one sentence; none where nothing was
 * passed or broke.
 *
 * @param names of alarms by id
 */
export function warningTold(
  episodes: readonly Episode[],
  alarms: readonly AlarmVerdict[],
  names: ReadonlyMap<string, string>,
): string | null {
  const [worst] = worstFirst(episodes)
  if (worst?.over !== true) return null
  const what = episodeNames[worst.kind].toLowerCase()
  const moment = worst.before?.to ?? worst.start
  const warned = alarms.flatMap(({ id, firstAt }) =>
    firstAt !== null && firstAt.segment === worst.segment && firstAt.t <= moment
      ? [{ name: names.get(id) ?? id, before: moment - firstAt.t }]
      : [],
  )
  const first = warned.toSorted((one, other) => other.before - one.before)[0]
  return first === undefined
    ? `None of these alarms would have spoken before it (${what}, ${moment.toFixed(1)}\u202Fs).`
    : `${first.name} would have spoken ${first.before.toFixed(1)}\u202Fs before it (${what}, ${moment.toFixed(1)}\u202Fs).`
}
