/**
 * What it means to pass a limit, in the order in which a ledger ranks them: ordinary use must not break anything once
 * (`holds`), nor wear it out (`lasts`); what a jam or running free at full charge would do is said beside them (`mishap`).
 *
 * *Source:* `docs/model.md` §8.
 */
export const limitGroups = ['holds', 'lasts', 'mishap'] as const
export type LimitGroup = (typeof limitGroups)[number]

/** Place of each group in the ledger. */
export const groupRank: Readonly<Record<LimitGroup, number>> = { holds: 0, lasts: 1, mishap: 2 }

/** A group as a heading. */
export const groupWords: Readonly<Record<LimitGroup, string>> = {
  holds: 'Holds: ordinary use, must not break once',
  lasts: 'Lasts: for long, in continuous duty',
  mishap: 'In a mishap: a jam, running away free',
}

/** Whether passing a limit of this group says that the machine is not fit for use, and not only what a mishap would do. */
export function isDecisive(group: LimitGroup): boolean {
  return group !== 'mishap'
}
