import type { QuantityKind } from '../../units/kinds.ts'
import type { EntryReader } from '../entry-reader.ts'

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

/** Holds where another entry is one of these words. */
export interface Condition {
  readonly entry: string
  readonly among: readonly string[]
}

/** A default that other entries decide: the material's own, the air's temperature. */
export interface DerivedDefault {
  /** What it is, for a sentence: `that of the material`. */
  readonly says: string
  /**
   * Its value in the entry's bench unit; a word where the entry is one.
   *
   * @param entries the build, with its other defaults in force
   * @param group path of the group that holds the entry: `track`, `stages.0.joint`
   */
  readonly of: (entries: EntryReader, group: string) => number | string | undefined
}

/** How a builder can change an entry in the workshop, or buy it otherwise. */
export interface LeverFacts {
  /** Sizes as they are sold or set, in the entry's bench unit; common practice, no source. Absent for a choice. */
  readonly step?: number
  /** The only way that makes sense: less drag, a higher rating. Absent: either. */
  readonly way?: 'less' | 'more'
  /**
   * How far it can be bought, cut or set, inside the entry's range. *Source:* common practice, no source. One that lies
   * beyond already may move towards it, not further away.
   */
  readonly least?: number
  readonly most?: number
  /** The most that a part is changed to: so many times, or such a part of, what is there. Absent: see `remedy/`. */
  readonly times?: number
  /** The only sizes that are sold, in place of every step. */
  readonly sizes?: readonly number[]
  /** Choices of a list instead of numbers. */
  readonly choices?: readonly string[]
}

/** That a search can vary it. */
export interface AxisFacts {
  /** Its place among those on offer, lowest first. */
  readonly offered: number
  /** How early it turns in a search: 0 changes least often. What decides ready-made parts alone turns last. */
  readonly turns: number
}

/**
 * One entry of the stored build: all that is known of it, beside its key. Its check, its type, its field in the form,
 * the sentences about it and its line on the page of entries are made from this row.
 */
export interface Row {
  readonly label: string
  /** Its bench unit, that of the key, is `kindUnits[kind].bench`. */
  readonly kind: QuantityKind
  /** What is counted, where the kind is a count: `cells`, `teeth`. */
  readonly counted?: string
  readonly low?: number
  readonly high?: number
  /**
   * What it mostly is on machines of 1 to 300 kg, bench unit: a number outside is taken, and said to be unusual, since a
   * slip of a power of ten stays within what is allowed. *Source:* common practice, no source.
   */
  readonly usual?: readonly [least: number, most: number]
  /** Only whole numbers. */
  readonly whole?: true
  /** Yes or no instead of a number or text. */
  readonly flag?: true
  /** In force where the entry is absent. Neither this nor `defaultFrom` nor `optional`: the entry is required. */
  readonly default?: number | string | boolean
  readonly defaultFrom?: DerivedDefault
  readonly optional?: true
  /** The words that it may be; one alone is always that word. */
  readonly choices?: readonly Choice[]
  /** The choices are the rows of a reference table. */
  readonly fromTable?: true
  /** The one value that it has in every build; it is stated in no sentence. */
  readonly always?: number | string
  /** Longest text, or longest document as JSON, in characters. */
  readonly longest?: number
  /** A group in braces with a form and a reader of its own; here only its size is checked. */
  readonly document?: true
  /** Heading of its part's form under which it stands, none where absent; `null` where no form has it. */
  readonly section?: string | null
  /** Its place there: by rank, lowest first and 0 where absent, then in the order of the file. */
  readonly rank?: number
  /** One or two plain sentences: what it is and how one gets it. */
  readonly help: string
  /** Which figures and limits an empty optional entry would bring. */
  readonly brings?: string
  readonly asks?: Ask
  /** Remedies may change it. */
  readonly lever?: LeverFacts
  readonly axis?: AxisFacts
  /** Optional elsewhere, required there. */
  readonly requiredWith?: Condition
}

/** A row with what its place in the build says of it. */
export interface Field extends Row {
  /** The entry exists only there. */
  readonly onlyWith?: Condition
}
