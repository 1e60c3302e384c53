import { commonOf, type StageCommon, type StoredStage } from '../../machine/stage-common.ts'

/** A gearbox of which only the ratio is known. */
export interface FixedStage extends StageCommon {
  readonly kind: 'fixed'
}

/** A gearbox of which only the ratio is known, in SI. *Source:* `docs/model.md` §4. */
export function fixedPartOf(stage: StoredStage<'fixed'>): FixedStage {
  return { kind: 'fixed', ratio: stage.ratio, driverTeeth: 0, drivenTeeth: 0, ...commonOf(stage) }
}
