import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/stage-kinds.ts'
import { beltPartOf } from '../stages/belt/machine.ts'
import { chainPartOf } from '../stages/chain/machine.ts'
import { fixedPartOf } from '../stages/fixed/machine.ts'
import { gearPartOf } from '../stages/gear/machine.ts'
import type { StageCommon, StoredStage } from './stage-common.ts'

/** What makes a part of each kind of reduction. */
const kinds = {
  gear: gearPartOf,
  belt: beltPartOf,
  chain: chainPartOf,
  fixed: fixedPartOf,
} satisfies { readonly [Kind in StageKindId]: (stage: StoredStage<Kind>) => StageCommon & { kind: Kind } }

/** A reduction in SI, of any kind. */
export type StagePart = ReturnType<(typeof kinds)[StageKindId]>

/** One reduction in SI, its tables looked up. */
export function stagePartOf(stage: Stage): StagePart {
  const make = kinds[stage.kind] as (stage: Stage) => StagePart
  return make(stage)
}
