import type { Build } from '../entries/schema.ts'
import { uncertaintyOfPieces, type Uncertainty } from '../uncertainty/uncertainty.ts'
import { tolerancedEntriesOf } from '../uncertainty/entries.ts'
import { uncertaintyPlanOf, type UncertaintyFound, type UncertaintyOptions } from '../uncertainty/samples.ts'
import type { JobKind } from './job.ts'

/** A build and how many samples from which seed. */
export interface UncertaintyInput extends UncertaintyOptions {
  readonly build: Build
}

/** Samples that one thread has drawn by the time that a second one would run at speed. */
const fewForOneThread = 2_000

/** Threads that are worth their start for these draws. */
export const uncertaintyThreads = ({ samples }: UncertaintyOptions): number =>
  samples <= fewForOneThread ? 1 : Infinity

/**
 * Uncertainty as a job: one item for each sample. The result so far is that of the samples that are in, null before the
 * first; the whole one is what `uncertaintyOf` gives, however many threads there were.
 */
export const uncertaintyJob: JobKind<UncertaintyInput, readonly UncertaintyFound[], Uncertainty | null> = {
  name: 'uncertainty',
  threadsFor: uncertaintyThreads,
  sizeOf: ({ build, samples }) => (tolerancedEntriesOf(build).entries.length === 0 ? 1 : samples),
  startWorker: ({ build, samples, seed }) => {
    const plan = uncertaintyPlanOf(build, { samples, seed })
    let found: UncertaintyFound[] = []
    return {
      work: (from, to) => void found.push(plan.run({ from, to })),
      take: () => {
        const part = found
        found = []
        return { part, transfer: part.flatMap(buffersOf) }
      },
    }
  },
  startCollector: ({ build, samples, seed }) => {
    const plan = uncertaintyPlanOf(build, { samples, seed })
    const parts: UncertaintyFound[] = []
    return {
      add: (part) => void parts.push(...part),
      outcome: () => (parts.length === 0 ? null : uncertaintyOfPieces(plan, parts)),
      gathered: () => parts,
    }
  },
}

function buffersOf({ values, margins, impossible, held }: UncertaintyFound): ArrayBuffer[] {
  return [values, margins, impossible, held].map((column) => column.buffer as ArrayBuffer)
}
