import type { QuantityKind } from '../../units/kinds.ts'

/** One of the words that an entry may be. */
export interface Choice {
  readonly value: string
  readonly label: string
}

/**
 * How a builder's number, read in another convention, becomes the entry: a factor, or one that the build itself knows.
 * `null`: no factor turns one into the other; the note says why and what to do instead.
 */
export type ConventionFactor =
  number | 'inverse' | 'polePairs' | 'perPolePair' | 'parallel' | 'perLoop' | null

/** One way in which labels and people mean a number. */
export interface Convention {
  readonly label: string
  readonly factor: ConventionFactor
  readonly note?: string
}

/** Asked where two conventions in use differ by a factor: the first one is how the build stores it. */
export interface Ask {
  readonly question: string
  readonly conventions: readonly [Convention, Convention, ...Convention[]]
}

/** Holds where another entry of the same group is one of these words. */
export interface Condition {
  readonly entry: string
  readonly among: readonly string[]
}

/** All that is known of one entry of the stored build; the schema, the form and the sentences are made from it. */
export interface Field {
  readonly label: string
  /** Its bench unit, that of the key, is `kindUnits[kind].bench`. */
  readonly kind: QuantityKind
  /** What is counted, where the kind is a count: `cells`, `teeth`. */
  readonly counted?: string
  readonly low?: number
  readonly high?: number
  /** Only whole numbers. */
  readonly whole?: true
  /** In force where the entry is absent. Neither this nor `optional`: the entry is required. */
  readonly default?: number | string
  readonly optional?: true
  readonly choices?: readonly Choice[]
  /** The choices are the rows of a reference table. */
  readonly fromTable?: true
  /** Longest text, in characters. */
  readonly longest?: number
  /** One or two plain sentences: what it is and how one gets it. */
  readonly help: string
  /** Which figures and limits an empty optional entry would bring. */
  readonly brings?: string
  readonly asks?: Ask
  /** The entry exists only there. */
  readonly onlyWith?: Condition
  /** Optional elsewhere, required there. */
  readonly requiredWith?: Condition
}

/** Fields by the path of their entry, lists written as `*`. */
export type FieldTable = Readonly<Record<string, Field>>
