import type { Build } from '../entries/schema.ts'
import type { InAir } from '../fit/in-air.ts'
import type { ColumnsChoice } from '../log/columns/choice.ts'
import { LogReading } from '../log/log.ts'
import { runOfLog } from '../validate/run.ts'
import { validationOf, type TracedValidation } from '../validate/validate.ts'
import type { JobKind } from './job.ts'

/** A log as it was opened, and the build that is held against it. */
interface ValidateInput {
  readonly build: Build
  readonly bytes: Uint8Array
  readonly choice: ColumnsChoice
  /** Stretches that were driven with the loops in the air. */
  readonly inAir: readonly InAir[]
}

/** A build held against a log in a thread: the log's steps, then the comparison. Null until it is done. */
export const validateJob: JobKind<ValidateInput, TracedValidation | null, TracedValidation | null> = {
  name: 'validate',
  alone: true,
  sizeOf: (input) => readingOf(input).steps + 1,
  startWorker: (input) => {
    const reading = readingOf(input)
    let found: TracedValidation | null = null
    return {
      work: (from, to) => {
        for (let item = from; item < to; item += 1) {
          if (reading.done) found = compared(reading, input)
          else reading.step()
        }
      },
      take: () => ({ part: found, transfer: [] }),
    }
  },
  startCollector: () => {
    let found: TracedValidation | null = null
    return {
      add: (part) => {
        found = part ?? found
      },
      outcome: () => found,
    }
  },
}

const readingOf = ({ build, bytes, choice }: ValidateInput) =>
  new LogReading({ build, bytes, choice, alarms: null })

function compared(reading: LogReading, { build, inAir }: ValidateInput): TracedValidation | null {
  const [read, result] = [reading.read(), reading.result()]
  if (read === null || result?.ok !== true) return null
  return validationOf(build, runOfLog(read, result.value.episodes, inAir))
}
