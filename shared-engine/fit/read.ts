import { readJsonFile, soundGroupOf } from '../entries/json-file.ts'
import { valueAt } from '../entries/path.ts'
import { readingMistake } from '../measure/mistake.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import { z } from '../reference/zod.ts'
import { channelNames, type FitLog } from './log.ts'

const channelsFormat = 'pitchline-channels'
const channelsVersion = 1

/** 64 MiB: hours of a log, ten times a second. */
const mostLogBytes = 64 * 1_048_576

const error = 'a list of numbers or null'
const cell = z.number({ error: 'a number or null' }).nullable()
const column = z.array(cell, { error })
const times = z
  .array(z.number({ error: 'a number' }), { error: 'a list of numbers' })
  .min(1, { error: 'one or more' })

const segmentSchema = z.strictObject(
  {
    offGround: z.boolean({ error: 'true or false' }).optional(),
    channels: z.strictObject(
      {
        seconds: times,
        ...Object.fromEntries(channelNames.map((name) => [name, column.optional()])),
      },
      { error: `seconds and ${channelNames.join(', ')}` },
    ),
  },
  { error: 'offGround and channels' },
)

const positive = z.number({ error: 'a number above 0' }).positive({ error: 'a number above 0' })

const logSchema = z.strictObject({
  format: z.literal(channelsFormat, { error: `"${channelsFormat}"` }),
  version: z.literal(channelsVersion, { error: `${channelsVersion}` }),
  name: z.string({ error: 'text' }).optional(),
  notes: z.string({ error: 'text' }).optional(),
  noise: z
    .strictObject(Object.fromEntries(channelNames.map((name) => [name, positive.optional()])), {
      error: 'σ by channel',
    })
    .optional(),
  segments: z.array(segmentSchema, { error: 'a list of segments' }).min(1, { error: 'one or more segments' }),
})

/** More mistakes of one kind than this help nobody. */
const mostMistakes = 200

/** Channels of a log from a file's bytes, or every mistake in them at once. */
export function readChannels(bytes: Uint8Array): Result<FitLog> {
  return readJsonFile(bytes, {
    valueFrom: channelsFrom,
    most: mostLogBytes,
    empty: 'empty-file',
    twice: (path) => readingMistake(path, 'one of it, not two', undefined),
  })
}

function channelsFrom(value: unknown): Result<FitLog> {
  const sound = soundGroupOf(value, (found) => readingMistake('', 'keys and values in braces', found))
  if (!sound.ok) return sound
  const { forbidden } = sound.value
  const read = logSchema.safeParse(value)
  if (!read.success || forbidden.length > 0) {
    const issues = read.error?.issues.slice(0, mostMistakes) ?? []
    return failed([...forbidden, ...issues.flatMap((issue) => mistakesOf(issue, value))])
  }
  const { noise = {}, segments } = read.data
  const log: FitLog = {
    noise: noise as FitLog['noise'],
    segments: segments.map(({ offGround = false, channels: { seconds, ...channels } }) => ({
      offGround,
      seconds,
      channels: channels as FitLog['segments'][number]['channels'],
    })),
  }
  const mistakes = log.segments.flatMap(segmentMistakes)
  return mistakes.length > 0 ? failed(mistakes) : succeeded(log)
}

function mistakesOf(issue: z.core.$ZodIssue, value: unknown): Mistake[] {
  const at = (path: readonly PropertyKey[]) => valueAt(value, path.map(String))
  const { path } = issue
  if (issue.code !== 'unrecognized_keys') return [readingMistake(path.join('.'), issue.message, at(path))]
  const known = path.includes('channels')
    ? `seconds, ${channelNames.join(', ')}`
    : path[0] === 'noise'
      ? channelNames.join(', ')
      : path[0] === 'segments'
        ? 'offGround, channels'
        : 'format, version, name, notes, noise, segments'
  return issue.keys.map((key) =>
    readingMistake([...path, key].join('.'), `only ${known}`, at([...path, key])),
  )
}

/** Rules between the columns of a segment. */
function segmentMistakes({ seconds, channels }: FitLog['segments'][number], place: number): Mistake[] {
  const at = `segments.${place}.channels`
  const backwards = seconds.findIndex((time, row) => row > 0 && !(time > (seconds[row - 1] ?? time)))
  const late =
    backwards < 0
      ? []
      : [readingMistake(`${at}.seconds.${backwards}`, 'more than the row before', seconds[backwards])]
  const uneven = Object.entries(channels).flatMap(([name, values]) =>
    values === undefined || values.length === seconds.length
      ? []
      : [readingMistake(`${at}.${name}`, `${seconds.length} rows, as many as seconds`, values)],
  )
  return [...late, ...uneven]
}
