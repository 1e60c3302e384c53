import type { Row } from '../../rows/row.ts'
import * as table from '../../stage-kinds.ts'
import type { AnyStageKind } from './kind.ts'

export type StageKindId = keyof typeof table

/** Each kind of reduction by its word. */
export const stageKinds: Readonly<Record<StageKindId, AnyStageKind>> = { ...table }

/** Their words, in the order in which they are offered. */
export const stageKindIds = (Object.keys(stageKinds) as StageKindId[]).toSorted(
  (one, other) => stageKinds[one].offered - stageKinds[other].offered,
)

/** The word for a reduction's kind. */
const kindRow = {
  label: 'Kind of reduction',
  kind: 'text',
  choices: stageKindIds.map((value) => ({ value, label: stageKinds[value].label })),
  help: 'What turns the next shaft. A bought gearbox, whose inside you need not check, is one of a known ratio.',
} as const satisfies Row

type RowsOf<Kind extends StageKindId> = { readonly kind: typeof kindRow } & (typeof table)[Kind]['rows']

/**
 * The rows of each kind, the word for it first. The gearbox comes before all others, so that its ratio is listed before
 * what wheels, belts and chains are made of.
 */
export const stageRows = Object.fromEntries(
  ['fixed' as const, ...stageKindIds].map((id) => [id, { kind: kindRow, ...stageKinds[id].rows }]),
) as unknown as { readonly [Kind in StageKindId]: RowsOf<Kind> }
