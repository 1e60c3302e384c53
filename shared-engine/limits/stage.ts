import { stageKindIds, type StageKindId } from '../entries/parts/stages/kinds.ts'
import type { Machine, StagePart } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { shaftLimits } from '../stages/shaft/limits.ts'
import type { Ledger } from './ledger.ts'
import type { Limit } from './limit.ts'
import type { StageKindLimits } from './stage-kind.ts'
import * as table from './stage-kinds.ts'

/** Limits of each kind of reduction, beside those that every kind has. */
const kinds = { ...table } satisfies {
  readonly [Kind in StageKindId]: StageKindLimits<string, Extract<StagePart, { kind: Kind }>>
}

/** The same, to be called with a reduction of the very kind that it is looked up by. */
const byKind: Readonly<Record<StageKindId, StageKindLimits<string, StagePart>>> = kinds

type NamesOf<Limits> = Limits extends StageKindLimits<infer Name, never> ? Name : never

/** Last word of the id of a reduction's limit. */
export type StageLimitName = NamesOf<(typeof kinds)[StageKindId] | typeof shaftLimits>

/** Reductions count from 1. */
export type StageLimitId = `stage.${number}.${StageLimitName}`

const limitsAt = (limits: StageKindLimits<string, never>, index: number): readonly Limit[] =>
  Object.values(limits.byName).flatMap((places) => places[index] ?? [])

/** Limits that a reduction of a kind can have at a place, counted from 0. *Source:* `docs/model.md` §4. */
export function limitsOfKind(kind: StageKindId, index: number): readonly Limit[] {
  return [...limitsAt(byKind[kind], index), ...limitsAt(shaftLimits, index)]
}

/** Every limit of the reductions by kind and place. */
export const stageLimits: readonly Limit[] = [
  ...stageKindIds.map((kind) => kinds[kind]),
  shaftLimits,
].flatMap(({ byName }) => Object.values<readonly Limit[]>(byName).flat())

/** What there is to say about the limits of a machine's reductions, each sentence once. */
export function stageRemarks({ stages }: Machine): readonly string[] {
  return [...new Set(stages.flatMap((stage) => byKind[stage.kind].remark?.(stage) ?? []))]
}

/** Adds those that the machine's reductions have. *Source:* `docs/model.md` §§4 and 8, the rows of the same ids. */
export function measureStages(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { stages } = machine
  const moving = e.top.exists
  for (let index = 0; index < stages.length; index += 1) {
    const stage = stages[index]
    const duty = e.stageDuties[index]
    if (stage === undefined || duty === undefined) return
    byKind[stage.kind].measure(ledger, index, stage, duty, moving)
    shaftLimits.measure(ledger, index, stage, duty, moving)
  }
}
