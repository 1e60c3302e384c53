import { shearOfYield } from '../constants.ts'
import { everyStage } from '../entries/parts/stages/every.ts'
import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/parts/stages/kinds.ts'
import { materialOf, type Material } from '../reference/materials.ts'
import { bearingPartOf, type BearingPart } from './bearing.ts'
import { jointPartOf, type JointPart } from './joint.ts'
import { siOf } from './si.ts'

/** A reduction of a kind as it is stored. */
export type StoredStage<Kind extends StageKindId> = Extract<Stage, { kind: Kind }>

/** Driven shaft of a reduction. */
export interface ShaftPart {
  readonly diameter: number
  readonly material: Material
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
  /** m, bearing to bearing with the wheel midway, or from the last bearing to its middle; null where not given. */
  readonly span: number | null
  readonly overhang: number | null
  /** N·m at which a limiter between driven wheel and shaft slips; null without one. */
  readonly slipTorque: number | null
  readonly joint: JointPart | null
  readonly bearing: BearingPart | null
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
        : {
            diameter,
            material: materialOf(shaftMaterial),
            allowedShear: shearOfYield * materialOf(shaftMaterial).yield,
          },
    span: si('shaftSpanMm'),
    overhang: si('shaftOverhangMm'),
    slipTorque: si('slipTorqueNm'),
    joint: stage.joint === undefined ? null : jointPartOf(stage.joint),
    bearing: stage.bearing === undefined ? null : bearingPartOf(stage.bearing),
  }
}

/** Teeth of two wheels and the ratio that they make. */
export function wheelsOf(stage: { driverTeeth: number; drivenTeeth: number }) {
  const { driverTeeth, drivenTeeth } = stage
  return { ratio: drivenTeeth / driverTeeth, driverTeeth, drivenTeeth }
}
