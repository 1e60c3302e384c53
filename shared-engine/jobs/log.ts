import { LogReading, type LogInput } from '../log/log.ts'
import type { LogResult } from '../log/result.ts'
import type { Result } from '../mistakes/mistake.ts'
import type { JobKind } from './job.ts'

/**
 * A log read in a thread: an item for each block of the text, and two for what follows. A Stop is heard between items; the
 * last two take up to a second each for a million rows.
 */
export const logJob: JobKind<LogInput, Result<LogResult> | null, Result<LogResult> | null> = {
  name: 'log',
  alone: true,
  sizeOf: (input) => new LogReading(input).steps,
  startWorker: (input) => {
    const reading = new LogReading(input)
    return {
      work: (from, to) => {
        for (let item = from; item < to; item += 1) reading.step()
      },
      take: () => ({ part: reading.result(), transfer: [] }),
    }
  },
  startCollector: () => {
    let found: Result<LogResult> | null = null
    return {
      add: (part) => {
        found = part ?? found
      },
      outcome: () => found,
    }
  },
}
