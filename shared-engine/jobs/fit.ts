import type { Build } from '../entries/schema.ts'
import { tracedFit, type TracedFit } from '../fit/fit.ts'
import { fitLogOf } from '../fit/from-log.ts'
import type { InAir } from '../fit/in-air.ts'
import type { ColumnsChoice } from '../log/columns/choice.ts'
import { LogReading } from '../log/log.ts'
import { channelsOfFit, type FittedChannel } from '../validate/fitted.ts'
import type { JobKind } from './job.ts'

/** A log as it was opened, and the entries that it is asked for. */
interface FitInput {
  readonly build: Build
  readonly bytes: Uint8Array
  readonly choice: ColumnsChoice
  /** Paths of entries. */
  readonly asked: readonly string[]
  /** Stretches that were driven with the loops in the air. */
  readonly inAir: readonly InAir[]
}

/** Reading is cut into the reader's own steps; the fit itself is one. */
const fitStep = 1

/** A fit with what its plots show: residuals, and the channels as they are predicted before and after. */
export interface SeenFit extends TracedFit {
  readonly channels: readonly FittedChannel[]
}

/** A build fitted to a log in a thread: the log's steps, then the fit. Null until it is done, or where no log is read. */
export const fitJob: JobKind<FitInput, SeenFit | null, SeenFit | null> = {
  name: 'fit',
  alone: true,
  sizeOf: (input) => readingOf(input).steps + fitStep,
  startWorker: (input) => {
    const reading = readingOf(input)
    let found: SeenFit | null = null
    return {
      work: (from, to) => {
        for (let item = from; item < to; item += 1) {
          if (reading.done) found = fitted(reading, input)
          else reading.step()
        }
      },
      take: () => ({ part: found, transfer: [] }),
    }
  },
  startCollector: () => {
    let found: SeenFit | null = null
    return {
      add: (part) => {
        found = part ?? found
      },
      outcome: () => found,
    }
  },
}

const readingOf = ({ build, bytes, choice }: FitInput) =>
  new LogReading({ build, bytes, choice, alarms: null })

function fitted(reading: LogReading, { build, asked, inAir }: FitInput): SeenFit | null {
  const read = reading.read()
  if (read === null) return null
  const log = fitLogOf(read, inAir)
  const fit = tracedFit(build, log, asked)
  return { ...fit, channels: channelsOfFit(build, log, fit.answer) }
}
