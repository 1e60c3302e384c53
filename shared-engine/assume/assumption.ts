import type { EntryReader } from '../entries/entry-reader.ts'

/** An estimate of one entry, made of others for as long as nobody has entered it. */
export interface Assumption {
  /** Path of the entry; places in lists as `*`. */
  readonly path: string
  /**
   * In the engine's unit of the entry's kind; undefined where what it rests on is unsound.
   *
   * @param entries the build
   * @param group path of the group that holds the entry: `motor`, `stages.0`
   */
  readonly of: (entries: EntryReader, group: string) => number | undefined
  /** By which factor the true value may lie above or below: what a judgement that rests on it has to bear. */
  readonly within: number
  /** What it is made of, for a sentence: "from the speed constant and the mass of the motor". */
  readonly from: string
}
