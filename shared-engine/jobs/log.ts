import { thinned } from '../draw/thin.ts'
import { evidenceOfColumns, type ColumnEvidence } from '../log/columns/evidence.ts'
import type { Pattern } from '../drive/drive.ts'
import { lifeUsedOf, type LifeUsed } from '../log/life/used.ts'
import { runPattern } from '../log/run-pattern.ts'
import { LogReading, type LogInput } from '../log/log.ts'
import type { LogResult } from '../log/result.ts'
import { seriesOf, type LogSeries } from '../log/series.ts'
import type { Result } from '../mistakes/mistake.ts'
import type { JobKind } from './job.ts'

/** What a log says, and its channels for plots; no series where it cannot be read. */
interface LogFound {
  readonly result: Result<LogResult>
  readonly series: readonly LogSeries[]
  /** What the meaning of each column rests on. */
  readonly evidence: readonly ColumnEvidence[]
  /** What the run took of the lives of teeth, loops and shafts. */
  readonly life: readonly LifeUsed[]
  /** The run as a drive; null without an rpm. */
  readonly pattern: Pattern | null
}

/** Points of a series from which it is thinned, and columns of time that keep their first, least, greatest and last. */
const manyPoints = 40_000
const columns = 10_000

/**
 * A log read in a thread: an item for each block of the text, and two for what follows. A Stop is heard between items; the
 * last two take up to a second each for a million rows.
 */
export const logJob: JobKind<LogInput, LogFound | null, LogFound | null> = {
  name: 'log',
  alone: true,
  sizeOf: (input) => new LogReading(input).steps,
  startWorker: (input) => {
    const reading = new LogReading(input)
    return {
      work: (from, to) => {
        for (let item = from; item < to; item += 1) reading.step()
      },
      take: () => ({ part: foundOf(reading, input), transfer: [] }),
    }
  },
  startCollector: () => {
    let found: LogFound | null = null
    return {
      add: (part) => {
        found = part ?? found
      },
      outcome: () => found,
    }
  },
}

function foundOf(reading: LogReading, { choice }: LogInput): LogFound | null {
  const result = reading.result()
  const read = reading.read()
  if (result === null) return null
  if (!result.ok || read === null) return { result, series: [], evidence: [], life: [], pattern: null }
  return {
    result,
    series: forScreens(seriesOf(read, result.value.episodes)),
    evidence: evidenceOfColumns(read, choice),
    life: lifeUsedOf(read, result.value.episodes),
    pattern: runPattern(read, result.value.episodes, 'A logged run'),
  }
}

/** Each thinned before the next is made. */
function forScreens(all: Iterable<LogSeries>): readonly LogSeries[] {
  const found: LogSeries[] = []
  for (const one of all) found.push(forScreen(one))
  return found
}

/** A series with no more points than a screen can show: no peak is lost, and gaps stay gaps. */
function forScreen(series: LogSeries): LogSeries {
  const { seconds, values } = series
  const first = seconds[0]
  const last = seconds.at(-1)
  if (seconds.length <= manyPoints || first === undefined || last === undefined) return series
  const columnOf = (at: number) => ((at - first) / (last - first)) * columns
  if (series.range !== undefined) return thinnedRange(series, series.range, columnOf)
  const { xs, ys } = thinned(seconds, values, columnOf)
  return { ...series, seconds: xs, values: ys }
}

/** A range with its first value, its least and its greatest in each column; gaps stay gaps. */
function thinnedRange(
  { seconds, values, ...rest }: LogSeries,
  { low, high }: NonNullable<LogSeries['range']>,
  columnOf: (seconds: number) => number,
): LogSeries {
  const kept = { seconds: [] as number[], values: [] as (number | null)[] }
  const range = { low: [] as (number | null)[], high: [] as (number | null)[] }
  let column = NaN
  seconds.forEach((time, at) => {
    const [value = null, least = null, most = null] = [values[at], low[at], high[at]]
    const here = Math.floor(columnOf(time))
    const [lowest, highest] = [range.low.at(-1) ?? null, range.high.at(-1) ?? null]
    if (here === column && least !== null && most !== null && lowest !== null && highest !== null) {
      range.low[range.low.length - 1] = Math.min(least, lowest)
      range.high[range.high.length - 1] = Math.max(most, highest)
      return
    }
    column = here
    kept.seconds.push(time)
    kept.values.push(value)
    range.low.push(least)
    range.high.push(most)
  })
  return { ...rest, ...kept, range }
}
