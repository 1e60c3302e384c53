import { evidenceOfColumns, type ColumnEvidence } from '../log/columns/evidence.ts'
import type { Pattern } from '../drive/drive.ts'
import { lifeUsedOf, type LifeUsed } from '../log/life/used.ts'
import { runPattern } from '../log/run-pattern.ts'
import { LogReading, type LogInput } from '../log/log.ts'
import type { LogResult } from '../log/result.ts'
import { buffersOf, seriesOf, type LogSeries } from '../log/series.ts'
import type { Result } from '../mistakes/mistake.ts'
import type { JobKind } from './job.ts'

/** What a log says, and its channels for plots; no series where it cannot be read. */
export interface LogFound {
  /** Whether all is there: the story is told before the channels are ready to be drawn, life and drive worked out. */
  readonly whole: boolean
  readonly result: Result<LogResult>
  readonly series: readonly LogSeries[]
  /** What the meaning of each column rests on. */
  readonly evidence: readonly ColumnEvidence[]
  /** What the run took of the lives of teeth, loops and shafts. */
  readonly life: readonly LifeUsed[]
  /** The run as a drive; null without an rpm. */
  readonly pattern: Pattern | null
  /** Headings of the columns, of a log too that cannot be read. */
  readonly headings: readonly string[]
  /** By what a log of this kind is known again, one that cannot be read too; null: by nothing. */
  readonly shape: string | null
}

/** A log to be read in a thread. */
interface LogJobInput extends LogInput {
  /** A copy of the bytes to be given away, made beforehand: of a long log it takes longer than a window may stand still. */
  readonly copy?: Uint8Array
}

/**
 * A log read in a thread: an item for each block of the text, and so many for what follows, a pause between any two. Its
 * story is told as soon as it is known, all else at the end.
 * It is given away with all that was read, so that nothing of a long log is copied.
 */
export const logJob: JobKind<LogJobInput, LogFound | null, LogFound | null> = {
  name: 'log',
  alone: true,
  sent: ({ copy, ...input }) => {
    // One that was given away before is empty: the log is begun anew, and needs another.
    const bytes = copy?.length === input.bytes.length ? copy : input.bytes.slice()
    return { input: { ...input, bytes }, transfer: bytes.buffer instanceof ArrayBuffer ? [bytes.buffer] : [] }
  },
  isTold: (outcome) => outcome?.result.ok === true,
  sizeOf: (input) => new LogReading(input).steps,
  startWorker: (input) => {
    const series: LogSeries[] = []
    let rest: Pick<LogFound, 'life' | 'pattern'> = { life: [], pattern: null }
    let evidence: readonly ColumnEvidence[] = []
    let isTold = false
    const reading = new LogReading(input, function* (read, { episodes }) {
      evidence = evidenceOfColumns(read, input.choice)
      for (const one of seriesOf(read, episodes)) {
        series.push(one)
        yield
      }
      const life = yield* lifeUsedOf(read, episodes)
      yield
      rest = { life, pattern: runPattern(read, episodes, 'A logged run') }
    })
    return {
      work: (from, to) => {
        for (let item = from; item < to; item += 1) reading.step()
      },
      some: (from, to) => {
        for (let item = from; item < to; item += 1) if (reading.step()) return item + 1
        return to
      },
      take: () => {
        const result = reading.result()
        const whole = reading.done
        if (result === null || (!whole && isTold)) return { part: null, transfer: [] }
        isTold = true
        const told = { result, evidence, headings: reading.headings(), shape: reading.shape }
        return whole
          ? { part: { ...told, whole, series, ...rest }, transfer: buffersOf(series) }
          : { part: { ...told, whole, series: [], life: [], pattern: null }, transfer: [] }
      },
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
