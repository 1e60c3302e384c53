import { stageKindIds, type StageKindId } from '../entries/parts/stages/kinds.ts'
import type { JointPart, Machine, StagePart } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { UnitSystem } from '../units/kinds.ts'
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
export function stageRemarks({ stages }: Machine, e: Evaluation): readonly string[] {
  const told = stages.flatMap((stage, at) => {
    const duty = e.stageDuties[at]
    return duty === undefined ? [] : (byKind[stage.kind].remarks?.(stage, duty.topSpeed, at + 1) ?? [])
  })
  return [...new Set([...told, ...stages.flatMap(hubRemark)])]
}

/** A wheel whose hub is not judged: only those of gears are. */
function hubRemark({ shaft }: StagePart, at: number): readonly string[] {
  return shaft === null
    ? []
    : hubRemarkOf(shaft.joint, shaft.hubBearing, `on the driven shaft of stage ${at + 1}`)
}

/** Says of a joint that presses on a hub of unknown strength that the hub isn't counted. */
export function hubRemarkOf(joint: JointPart | null, hubBearing: number, where: string): readonly string[] {
  const pressing = joint !== null && joint.kind !== 'screw' && joint.kind !== 'clamp'
  return pressing && hubBearing === Infinity
    ? [`Of the joint ${where} the hub isn’t counted: what its wheel bears is not known.`]
    : []
}

/** What the shape of each reduction decides, with its number. */
export function stageShapes(
  { stages }: Machine,
  e: Evaluation,
): readonly Readonly<Record<string, number | null>>[] {
  return stages.map((stage, at) => {
    const duty = e.stageDuties[at]
    return { n: at + 1, ...(duty === undefined ? {} : byKind[stage.kind].shape?.(stage, duty.topSpeed)) }
  })
}

/** What belt or chain fits each reduction that has one, with its number. */
export function stageFits({ stages }: Machine): readonly Readonly<Record<string, number | null>>[] {
  return stages.flatMap((stage, at) => {
    const fit = byKind[stage.kind].fit?.(stage)
    return fit === undefined ? [] : [{ n: at + 1, ...fit }]
  })
}

/** What to buy for each reduction, in words; null for one of which nothing is known. */
export function stageOrders({ stages }: Machine, system: UnitSystem): readonly (string | null)[] {
  return stages.map((stage) => byKind[stage.kind].order?.(stage, system) ?? null)
}

/** Adds those that the machine's reductions have. *Source:* `docs/model.md` §§4 and 8, the rows of the same ids. */
export function measureStages(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { stages } = machine
  for (let index = 0; index < stages.length; index += 1) {
    const stage = stages[index]
    if (stage === undefined) return
    byKind[stage.kind].measure(ledger, index, stage, e, machine)
    shaftLimits.measure(ledger, index, stage, e, machine)
  }
}
