import type { EntryReader } from '../../entry-reader.ts'
import type { Rows } from '../../rows/group.ts'
import type { Stored } from '../../rows/types.ts'

/** Teeth of the two wheels of a reduction. */
export interface WheelTeeth {
  readonly driverTeeth: number
  readonly drivenTeeth: number
}

/** A reduction as a file holds it, without the word for its kind. */
type StoredRows<R extends Rows> = Stored<{ readonly label: string; readonly entries: R }>

/** What rules, sentences and the form know of a kind of reduction: what its folder states in `entries.ts`. */
export interface StageKindEntries<R extends Rows, OfKind extends object = StoredRows<R>> {
  readonly label: string
  /** In one word, for a narrow list. */
  readonly short: string
  /** Its place among the kinds on offer, lowest first. */
  readonly offered: number
  /** Its entries, those of every reduction among them; the word for its kind is put before them. */
  readonly rows: R
  /** The least that it has to have, as a start: with these teeth, or nearest to what they do. */
  readonly start: (teeth: WheelTeeth) => OfKind
  /** Its teeth, or those nearest to what it does. A method, so that a table of all kinds can be called with any reduction. */
  teethOf(stage: OfKind): WheelTeeth
  /**
   * Pitch radius of a wheel of so many teeth, m; undefined where an entry that it takes is unsound. Null for a kind whose
   * shafts are as far apart as its wheels make them.
   */
  readonly pitchRadius: ((entries: EntryReader, stage: string, teeth: number) => number | undefined) | null
  /** The size entered, where it has no open rating and the maker's is asked for. Null for a kind that has all ratings. */
  readonly unrated: ((entries: EntryReader, stage: string) => string | undefined) | null
}

/** Any kind, as a table of all of them holds it. */
export type AnyStageKind = StageKindEntries<Rows, object>
