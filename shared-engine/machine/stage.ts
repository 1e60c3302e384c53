import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/parts/stages/kinds.ts'
import * as table from './stage-kinds.ts'
import type { StageCommon, StoredStage } from './stage-common.ts'

/** What makes a part of each kind of reduction. */
const kinds = { ...table } satisfies {
  readonly [Kind in StageKindId]: (stage: StoredStage<Kind>) => StageCommon & { kind: Kind }
}

/** A reduction in SI, of any kind. */
export type StagePart = ReturnType<(typeof kinds)[StageKindId]>

/** One reduction in SI, its tables looked up. */
export function stagePartOf(stage: Stage): StagePart {
  const make = kinds[stage.kind] as (stage: Stage) => StagePart
  return make(stage)
}
