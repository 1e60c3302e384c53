import type { ChannelId } from '../reference/columns.ts'
import type { RpmReading } from './columns/rpm-scale.ts'
import { currentsIn } from './derive/current.ts'
import { storyOf, type Judged } from './episodes/all.ts'
import type { Episode } from './episodes/episode.ts'
import { ownAlarms, replayAlarms, type AlarmVerdict, type ReplayedAlarm } from './facts/alarms.ts'
import { factsOf, type LogFacts } from './facts/facts.ts'
import type { InPieces } from './pieces.ts'
import type { ReadLog } from './read.ts'
import type { Repair } from './repairs.ts'
import { sentenced, tellingOf } from './story/sentence.ts'
import { notesOf } from './story/notes.ts'
import { momentText } from './text/time-cell.ts'
import type { Encoding } from './text/encoding.ts'
import type { LogTimeForm } from './time/stamps.ts'

/** A column as it was read. */
export interface ColumnReading {
  readonly name: string
  readonly channel: ChannelId | null
  /** Key of the unit's table; null for times, words and columns without a meaning. */
  readonly unit: string | null
}

/** All that a log says of a build. SI numbers; null where something does not exist. */
export interface LogResult {
  readonly build: string
  readonly reading: {
    readonly encoding: Encoding
    readonly delimiter: string
    readonly decimal: '.' | ','
    readonly headerRow: number | null
    readonly fingerprint: string
    readonly rows: number
    readonly timeForm: LogTimeForm
    readonly stepSeconds: number | null
    readonly start: string | null
  }
  readonly columns: readonly ColumnReading[]
  readonly rpmScale: RpmReading | null
  readonly repairs: readonly Repair[]
  readonly segments: readonly { readonly firstRow: number; readonly rows: number; readonly seconds: number }[]
  readonly judged: Judged
  readonly facts: LogFacts
  readonly episodes: readonly Episode[]
  readonly alarms: readonly AlarmVerdict[]
  readonly notes: readonly string[]
}

/**
 * What a log says: its episodes, facts and alarms.
 *
 * @param alarms to replay; null: the program's own card
 */
export function* resultOf(log: ReadLog, alarms: readonly ReplayedAlarm[] | null): InPieces<LogResult> {
  const { data, model, text, stamps, rpm } = log
  const { timeline } = data
  const currents = yield* currentsIn(data, model)
  yield
  const story = yield* storyOf(data, model, currents, log.frozenRows, log.zeroRows)
  yield
  const facts = yield* factsOf(data, model, currents, story.episodes, rpm?.reading.source ?? null)
  const replayed = yield* replayAlarms(data, alarms ?? ownAlarms(model))
  const dated = stamps.form === 'epoch' || stamps.form === 'date'
  return {
    build: model.build.name,
    reading: {
      encoding: text.encoding,
      delimiter: text.dialect.delimiter,
      decimal: text.dialect.decimal,
      headerRow: text.headerRow,
      fingerprint: text.fingerprint,
      rows: text.grid.count,
      timeForm: stamps.form,
      stepSeconds: Number.isNaN(timeline.step) ? null : timeline.step,
      start: dated ? momentText(timeline.start) : null,
    },
    columns: columnsOf(log),
    rpmScale: rpm?.reading ?? null,
    repairs: text.repairs.list(),
    segments: timeline.segments.map(({ first, end }) => ({
      firstRow: timeline.lines[first] ?? 0,
      rows: end - first,
      seconds: timeline.t[end - 1] ?? 0,
    })),
    judged: story.judged,
    facts,
    episodes: story.episodes.map((episode) => sentenced(episode, tellingOf(facts, timeline.segments.length))),
    alarms: replayed,
    notes: notesOf(log, story.judged, facts),
  }
}

function columnsOf({ text, columns, stamps }: ReadLog): readonly ColumnReading[] {
  return text.grid.columns.map(({ name }, place) => {
    if (place === stamps.place) return { name, channel: 'time', unit: stamps.unit?.key ?? null }
    const found = columns.find((column) => column.place === place)
    return { name, channel: found?.channel ?? null, unit: found?.unit?.key ?? null }
  })
}
