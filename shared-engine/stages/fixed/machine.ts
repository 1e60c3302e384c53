import { fixedRows } from './entries.ts'
import { siOf } from '../../machine/si.ts'
import { commonOf, type StageCommon, type StoredStage } from '../../machine/stage-common.ts'

/** A gearbox of which only the ratio is known. */
export interface FixedStage extends StageCommon {
  readonly kind: 'fixed'
}

const fixedIn = siOf(fixedRows)

/** A gearbox of which only the ratio is known, in SI. *Source:* `docs/model.md` §4. */
export function fixedPartOf(stage: StoredStage<'fixed'>): FixedStage {
  const si = fixedIn(stage)
  const common = commonOf(stage)
  return {
    kind: 'fixed',
    ratio: si('ratio'),
    driverTeeth: 0,
    drivenTeeth: 0,
    pullPerTorque: 0,
    efficiency: common.efficiency,
    drivenInertia: common.drivenInertia,
    shaft: common.shaft,
    slipTorque: common.slipTorque,
  }
}
