/** What a log can tell of. */
export type EpisodeKind =
  'over-rev' | 'sag' | 'over-temperature' | 'signal-lost' | 'spin' | 'load-lost' | 'jam' | 'stall' | 'cut-off'

/** The largest, or for volts the least, value of an episode. */
export interface Peak {
  readonly value: number
  /** s in the segment. */
  readonly t: number
  readonly unit: 'rpm' | 'V' | 'A' | 'degC'
}

/** What was there before the load went: from the last loaded sample on, so that the truth lies between the two ends. */
export interface BeforeLoss {
  /** s: the last sample that carried, and the first that did not. */
  readonly from: number
  readonly to: number
  /** Least and most of each. */
  readonly rpm: readonly [number, number]
  readonly motorAmps: number | null
  readonly packAmps: number | null
  readonly volts: number | null
  readonly forcePerLoopN: readonly [number, number] | null
  readonly toothN: readonly [number, number] | null
  readonly loopTensionN: readonly [number, number] | null
  readonly ratedPassedSecondsBefore: number | null
}

/** One thing that happened. */
export interface Episode {
  readonly kind: EpisodeKind
  /** From 1. */
  readonly segment: number
  /** Line of the file of its first sample. */
  readonly row: number
  /** s of its first and last sample. */
  readonly start: number
  readonly end: number
  /** s of the samples beside them: the moments lie between; null at the segment's ends. */
  readonly startAfter: number | null
  readonly endBefore: number | null
  readonly peak: Peak | null
  readonly limit: number | null
  /** Whether a limit was passed or something broke. */
  readonly over: boolean
  readonly channel?: string
  readonly how?: 'gap' | 'frozen' | 'zeros'
  readonly cause?: 'volts' | 'temperature' | null
  readonly before?: BeforeLoss
  /** Rpm that it cannot have passed after the load went. */
  readonly peakAtMost?: number | null
  readonly source?: string | null
  /** s by which a track that spun has to have held again; the episode itself lasts while the rpm is up. */
  readonly spunUntil?: number
  readonly sentence: string
}

/** By segment, start and kind. */
export function inOrder(episodes: readonly Episode[]): readonly Episode[] {
  return [...episodes].sort(
    (one, other) =>
      one.segment - other.segment ||
      one.start - other.start ||
      (one.kind < other.kind ? -1 : one.kind > other.kind ? 1 : 0),
  )
}
