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
    series: [...seriesOf(read, result.value.episodes)],
    evidence: evidenceOfColumns(read, choice),
    life: lifeUsedOf(read, result.value.episodes),
    pattern: runPattern(read, result.value.episodes, 'A logged run'),
  }
}
