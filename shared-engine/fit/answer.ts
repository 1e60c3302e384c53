import type { BlockName, Tell } from './entries.ts'
import type { ChannelName } from './log.ts'
import type { RefusalCode } from './refuse.ts'
import type { FitNote } from './sentences.ts'

/** An entry of a fit: offered with its error, or refused with the reason. */
export interface FittedEntry {
  readonly path: string
  readonly unit: string
  /** What the build has; null where it has nothing. */
  readonly build: number | null
  readonly value: number | null
  readonly standardError: number | null
  /** Part of the standard error that comes from the tolerances of what was held. */
  readonly fromTolerances: number | null
  readonly degreesOfFreedom: number | null
  readonly plusMinus: number | null
  readonly verdict: 'told' | 'rough' | 'refused'
  readonly code?: RefusalCode
  readonly with?: readonly string[]
  readonly tell?: Tell
}

/** How well one kind of residual agrees with the model. */
export interface FittedBlock {
  readonly name: BlockName
  readonly rows: number
  readonly pieces: number
  /** Reduced, before weights. */
  readonly chiSquared: number
  readonly scale: number
  readonly runsZ: number
  readonly lagOne: number
  readonly downweighted: number
}

/** What came of fitting a build to a log. */
export interface FitAnswer {
  readonly entries: readonly FittedEntry[]
  /** Paths that were solved for, in the order of `correlation`. */
  readonly fitted: readonly string[]
  readonly correlation: readonly (readonly number[])[]
  readonly condition: number
  readonly blocks: readonly FittedBlock[]
  /** σ of channels. */
  readonly noise: Readonly<Partial<Record<ChannelName, number>>>
  readonly notes: readonly FitNote[]
}
