/**
 * What the golden builds of version 2 owe and this program does not give yet, by name: a list that only shrinks. Each
 * name has to be wrong in at least one build still, or the test asks for it to be taken out.
 */
export const pending: {
  readonly figures: readonly string[]
  /** A number of a reduction or accessory is written n. */
  readonly limits: readonly string[]
  readonly parts: readonly ('stages' | 'alarms' | 'spreads' | 'notJudged')[]
} = {
  figures: [],
  limits: [],
  parts: [],
}
