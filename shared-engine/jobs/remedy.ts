import type { Build } from '../entries/schema.ts'
import { remediesFor, type Remedies } from '../remedy/remedy.ts'
import type { JobKind } from './job.ts'
import type { LimitId } from '../limits/id.ts'

/** A build and the limit that is to hold; null: the worst. */
interface RemedyInput {
  readonly build: Build
  readonly limit: LimitId | null
}

/** What would hold, as a job of one item: some tenths of a second, which a window may not be held up for. */
export const remedyJob: JobKind<RemedyInput, Remedies | null, Remedies | null> = {
  name: 'remedy',
  alone: true,
  sizeOf: () => 1,
  startWorker: ({ build, limit }) => {
    let found: Remedies | null = null
    return {
      work: () => {
        found = remediesFor(build, limit ?? undefined)
      },
      take: () => ({ part: found, transfer: [] }),
    }
  },
  startCollector: () => {
    let found: Remedies | null = null
    return {
      add: (part) => {
        found = part
      },
      outcome: () => found,
    }
  },
}
