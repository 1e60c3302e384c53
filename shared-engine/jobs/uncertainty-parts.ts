import { uncertaintyOfPieces, type Uncertainty } from '../uncertainty/uncertainty.ts'
import { uncertaintyPlanOf, type UncertaintyFound } from '../uncertainty/samples.ts'
import type { JobKind } from './job.ts'
import { uncertaintyJob, uncertaintyThreads, type UncertaintyInput } from './uncertainty.ts'

// Uncertainty in two jobs, for a window: ranking 10,000 draws for every limit takes a quarter of a second, more than the
// asking side may be held up. `uncertaintyJob` does both in one where the asking side may wait.

/** The first: draws on every thread, not yet put together. */
export const uncertaintyDrawsJob: JobKind<
  UncertaintyInput,
  readonly UncertaintyFound[],
  readonly UncertaintyFound[]
> = {
  name: 'uncertainty-draws',
  threadsFor: uncertaintyThreads,
  sizeOf: (input) => uncertaintyJob.sizeOf(input),
  startWorker: (input) => uncertaintyJob.startWorker(input),
  startCollector: () => {
    const parts: UncertaintyFound[] = []
    return { add: (part) => void parts.push(...part), outcome: () => parts }
  },
}

/** Draws, and what they were drawn from. */
interface UncertaintyDrawn extends UncertaintyInput {
  readonly pieces: readonly UncertaintyFound[]
}

/**
 * The second: what the draws say; whole where they are, or as far as they go. By one of the threads that drew, which has
 * read and compiled the work already: a thread of its own took longer to start than most of this takes.
 */
export const uncertaintyToldJob: JobKind<UncertaintyDrawn, Uncertainty | null, Uncertainty | null> = {
  name: 'uncertainty-told',
  threadsFor: () => 1,
  sizeOf: () => 1,
  startWorker: ({ build, samples, seed, pieces }) => {
    let told: Uncertainty | null = null
    return {
      work: () => {
        told = uncertaintyOfPieces(uncertaintyPlanOf(build, { samples, seed }), pieces)
      },
      take: () => ({ part: told, transfer: [] }),
    }
  },
  startCollector: () => {
    let told: Uncertainty | null = null
    return {
      add: (part) => {
        told = part
      },
      outcome: () => told,
    }
  },
}
