import { alarmsOf } from '../../alarms/alarms.ts'
import { failed, succeeded, type Result } from '../../mistakes/mistake.ts'
import { channelIds, type ChannelId } from '../../reference/columns.ts'
import { z } from '../../reference/zod.ts'
import { textOf } from '../../entries/utf8.ts'
import type { Channel } from '../channel.ts'
import type { LogData } from '../data.ts'
import { follows } from '../episodes/sampled.ts'
import type { LogModel } from '../model.ts'
import type { InPieces } from '../pieces.ts'
import { refusal } from '../refusal.ts'
import { momentOf } from './moments.ts'

const cardSchema = z.array(
  z.strictObject({
    id: z.string().min(1),
    channel: z.enum(channelIds),
    direction: z.enum(['above', 'below']),
    value: z.number(),
    hold: z.number().nonnegative(),
    hysteresis: z.number().nonnegative(),
    limit: z.number(),
  }),
)

/** An alarm to replay over a log, in the channel's unit and s. */
export type ReplayedAlarm = z.output<typeof cardSchema>[number]

/** How an alarm would have done; all null where the log lacks its channel. */
export interface AlarmVerdict {
  readonly id: string
  readonly spoke: number | null
  /** Spoke, and nothing past the limit followed within 30 s. */
  readonly falseAlarms: number | null
  /** Stretches past the limit that it had not announced. */
  readonly missed: number | null
  readonly firstAt: { readonly segment: number; readonly t: number } | null
}

/** Reads a card of alarms: rows `{ id, channel, direction, value, hold, hysteresis, limit }`. */
export function readAlarms(bytes: Uint8Array): Result<readonly ReplayedAlarm[]> {
  let value: unknown
  try {
    value = JSON.parse(textOf(bytes) ?? '')
  } catch {
    return failed([refusal('alarms', { path: 'the file of alarms', value: 'no JSON in UTF-8' })])
  }
  const read = cardSchema.safeParse(value)
  if (read.success) return succeeded(read.data)
  return failed(
    read.error.issues.map((issue) =>
      refusal('alarms', {
        path: issue.path.length === 0 ? 'the file of alarms' : issue.path.map(String).join('.'),
        value: 'not understood',
        allowed: issue.message,
      }),
    ),
  )
}

const channelOf: Readonly<Record<string, ChannelId>> = {
  rpm: 'rpm',
  'pack-volts': 'volts',
  'cell-volts': 'cellVolts',
  case: 'motorC',
  controller: 'controllerC',
  'motor-amps': 'motorAmps',
  'pack-amps': 'amps',
}

/** The program's own card, as far as it names channels of a log; its limits are those of the build. */
export function ownAlarms(model: LogModel): readonly ReplayedAlarm[] {
  const { motor, controller, pack } = model.machine
  const limits: Readonly<Record<string, number | null>> = {
    rpm: motor.ratedMaxRpm,
    'pack-volts': pack.floorVolts,
    'cell-volts': pack.floorVolts / pack.series,
    case: model.checked.figures.caseAtLimitC,
    controller: controller.maxTemperature,
    'motor-amps': motor.burstAmps ?? controller.burstAmps,
    'pack-amps': pack.burstAmps,
  }
  return alarmsOf(model.checked).flatMap(
    ({ id, value: set, voltsAtRms, direction, holdSeconds, hysteresis }) => {
      // A log's volts are as measured, without the sag added back.
      const value = voltsAtRms ?? set
      const channel = channelOf[id]
      const limit = limits[id] ?? null
      if (channel === undefined || value === null || limit === null) return []
      const side = direction === 'alarm when above' ? 'above' : 'below'
      return [{ id, channel, direction: side, value, hold: holdSeconds, hysteresis: hysteresis ?? 0, limit }]
    },
  )
}

/** Replays alarms over a log. */
export function* replayAlarms(
  data: LogData,
  alarms: readonly ReplayedAlarm[],
): InPieces<readonly AlarmVerdict[]> {
  const verdicts: AlarmVerdict[] = []
  for (const alarm of alarms) {
    const channel = data.channels.get(alarm.channel)
    if (channel === undefined || channel.samples.length === 0) {
      verdicts.push({ id: alarm.id, spoke: null, falseAlarms: null, missed: null, firstAt: null })
      continue
    }
    verdicts.push(verdictOf(channel, alarm))
    yield
  }
  return verdicts
}

/** One condition that made the alarm speak; times in the segment. */
interface Spoken {
  readonly segment: number
  /** Row of its first sample, and of that at which the alarm spoke. */
  readonly begun: number
  readonly row: number
  /** Infinity where it lasts to the segment's end. */
  readonly end: number
}

/** s after an alarm within which what it warned of has to come. *Source:* common practice, no source. */
const warningSeconds = 30

function verdictOf(channel: Channel, alarm: ReplayedAlarm): AlarmVerdict {
  const spoken = spokenOf(channel, alarm)
  const past = pastRows(channel, alarm)
  const first = spoken[0]
  const moment = first === undefined ? null : momentOf(channel, first.row, 0)
  return {
    id: alarm.id,
    spoke: spoken.length,
    falseAlarms: spoken.filter((one) => !isFollowed(channel, past, one)).length,
    missed: missedOf(channel, alarm, spoken),
    firstAt: moment === null ? null : { segment: moment.segment, t: moment.t },
  }
}

/** Rows whose sample is past the alarm's limit, in order. */
function pastRows(channel: Channel, { direction, limit }: ReplayedAlarm): readonly number[] {
  const sign = direction === 'above' ? 1 : -1
  const past: number[] = []
  for (const row of channel.samples) if (sign * (channel.values[row] ?? NaN) > sign * limit) past.push(row)
  return past
}

/** Whether the limit was passed from the condition's start to half a minute after its end. */
function isFollowed(
  { timeline }: Channel,
  past: readonly number[],
  { begun, end, segment }: Spoken,
): boolean {
  let low = 0
  let high = past.length
  while (low < high) {
    const middle = (low + high) >>> 1
    if ((past[middle] ?? 0) >= begun) high = middle
    else low = middle + 1
  }
  const next = past[low]
  if (next === undefined || timeline.segmentOf[next] !== segment) return false
  return (timeline.t[next] ?? NaN) <= end + warningSeconds
}

/** Stretches past the limit before which it had not spoken, or too long ago. */
function missedOf(channel: Channel, alarm: ReplayedAlarm, spoken: readonly Spoken[]): number {
  let missed = 0
  let place = -1
  for (const { segment, row, t } of stretchesOf(channel, alarm)) {
    while ((spoken[place + 1]?.row ?? Infinity) <= row) place += 1
    const last = spoken[place]
    if (last === undefined || last.segment !== segment || t - last.end > warningSeconds) missed += 1
  }
  return missed
}

/** Goes through a channel as the alarm would have: silent until beyond its value for the hold time without a break. */
function spokenOf(channel: Channel, alarm: ReplayedAlarm): readonly Spoken[] {
  const { samples, values, timeline } = channel
  const sign = alarm.direction === 'above' ? 1 : -1
  const spoken: Spoken[] = []
  let begun = -1
  let open: Omit<Spoken, 'end'> | null = null
  const close = (end: number) => {
    if (open !== null) spoken.push({ ...open, end })
    open = null
  }
  samples.forEach((row, place) => {
    const value = sign * (values[row] ?? NaN)
    const t = timeline.t[row] ?? NaN
    if (!follows(channel, place)) {
      if (timeline.segmentOf[row] !== timeline.segmentOf[samples[place - 1] ?? 0]) close(Infinity)
      begun = -1
    }
    const beyond = value > sign * alarm.value
    if (!beyond) begun = -1
    else if (begun < 0) begun = row
    if (open !== null && value <= sign * alarm.value - alarm.hysteresis) close(t)
    if (open === null && beyond && t - (timeline.t[begun] ?? NaN) >= alarm.hold) {
      open = { segment: timeline.segmentOf[row] ?? 0, begun, row }
    }
  })
  close(Infinity)
  return spoken
}

/** Where each stretch past the limit begins. */
function stretchesOf(
  channel: Channel,
  alarm: ReplayedAlarm,
): readonly { readonly segment: number; readonly row: number; readonly t: number }[] {
  const { samples, values, timeline } = channel
  const sign = alarm.direction === 'above' ? 1 : -1
  const isPast = (place: number) => sign * (values[samples[place] ?? 0] ?? NaN) > sign * alarm.limit
  const stretches: { segment: number; row: number; t: number }[] = []
  samples.forEach((row, place) => {
    if (!isPast(place) || (follows(channel, place) && isPast(place - 1))) return
    stretches.push({ segment: timeline.segmentOf[row] ?? 0, row, t: timeline.t[row] ?? 0 })
  })
  return stretches
}
