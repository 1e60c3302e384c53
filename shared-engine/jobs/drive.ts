import type { Build } from '../entries/schema.ts'
import type { Pattern } from '../drive/drive.ts'
import type { DriveRun } from '../drive/result.ts'
import { DriveUnderWay } from '../drive/run.ts'
import type { JobKind } from './job.ts'

/** A build and how it is driven. */
interface DriveInput {
  readonly build: Build
  readonly pattern: Pattern
}

/** Parts of a drive's time, for its progress. */
const parts = 1000

/**
 * A drive as a job, so that the window is not held up: parts of its time, on one thread, since each moment follows from the
 * one before. Most take some tenths of a second; Stop ends its thread.
 */
export const driveJob: JobKind<DriveInput, DriveRun | null, DriveRun | null> = {
  name: 'drive',
  alone: true,
  sizeOf: () => parts,
  startWorker: ({ build, pattern }) => {
    const drive = new DriveUnderWay(build, pattern)
    let at = 0
    return {
      work: (_, to) => {
        drive.until(to < parts ? (drive.seconds * to) / parts : Infinity)
        at = to
      },
      take: () => ({ part: at < parts ? null : drive.result(), transfer: [] }),
    }
  },
  startCollector: () => {
    let run: DriveRun | null = null
    return {
      add: (part) => {
        run = part ?? run
      },
      outcome: () => run,
    }
  },
}
