import { shearOfYield } from '../constants.ts'
import { everyStage } from '../entries/parts/stages/every.ts'
import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/parts/stages/kinds.ts'
import { materialOf } from '../reference/materials.ts'
import { siOf } from './si.ts'

/** A reduction of a kind as it is stored. */
export type StoredStage<Kind extends StageKindId> = Extract<Stage, { kind: Kind }>

/** Driven shaft of a reduction. */
export interface ShaftPart {
  readonly diameter: number
  /** Pa. */
  readonly allowedShear: number
}

/** What a reduction of any kind has. */
export interface StageCommon {
  readonly ratio: number
  readonly efficiency: number
  /** kg·m² of the driven wheel and shaft. */
  readonly drivenInertia: number
  readonly shaft: ShaftPart | null
  /** 0 for a `fixed` stage. */
  readonly driverTeeth: number
  readonly drivenTeeth: number
}

const stageIn = siOf(everyStage)

/** What every kind has: efficiency, driven inertia, and the shaft where both its entries are given. */
export function commonOf(stage: Stage) {
  const si = stageIn(stage)
  const { shaftMaterial } = stage
  const diameter = si('shaftDiameterMm')
  return {
    efficiency: si('efficiencyPercent'),
    drivenInertia: si('drivenInertiaGcm2'),
    shaft:
      diameter === null || shaftMaterial === undefined
        ? null
        : { diameter, allowedShear: shearOfYield * materialOf(shaftMaterial).yield },
  }
}

/** Teeth of two wheels and the ratio that they make. */
export function wheelsOf(stage: { driverTeeth: number; drivenTeeth: number }) {
  const { driverTeeth, drivenTeeth } = stage
  return { ratio: drivenTeeth / driverTeeth, driverTeeth, drivenTeeth }
}
