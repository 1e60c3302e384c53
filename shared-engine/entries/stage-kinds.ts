/**
 * The kinds of reduction. The one list of them: each floor has one `Record<StageKindId, …>`, so that a kind without its
 * entries, its part, its limits or its drawing does not compile.
 */
export const stageKindIds = ['gear', 'belt', 'chain', 'fixed'] as const

export type StageKindId = (typeof stageKindIds)[number]
