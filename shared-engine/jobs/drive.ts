import type { Build } from '../entries/schema.ts'
import type { Pattern } from '../drive/drive.ts'
import type { PatternRun } from '../drive/result.ts'
import { runPattern } from '../drive/run.ts'
import type { JobKind } from './job.ts'

/** A build and how it is driven. */
export interface PatternInput {
  readonly build: Build
  readonly pattern: Pattern
}

/**
 * A drive as a job, so that the window is not held up: one item, since each moment follows from the one before. Most take
 * some tenths of a second; Stop ends its thread.
 */
export const patternJob: JobKind<PatternInput, PatternRun | null, PatternRun | null> = {
  name: 'pattern',
  alone: true,
  sizeOf: () => 1,
  startWorker: ({ build, pattern }) => {
    let run: PatternRun | null = null
    return {
      work: () => {
        run = runPattern(build, pattern)
      },
      take: () => ({ part: run, transfer: [] }),
    }
  },
  startCollector: () => {
    let run: PatternRun | null = null
    return {
      add: (part) => {
        run = part
      },
      outcome: () => run,
    }
  },
}
