import { everyStage } from '../entries/parts/stages/every.ts'
import type { Stage } from '../entries/schema.ts'
import type { StageKindId } from '../entries/parts/stages/kinds.ts'
import { materialOf } from '../reference/materials.ts'
import { bearingPartOf } from './bearing.ts'
import { jointPartOf } from './joint.ts'
import { shaftPartOf, type ShaftPart } from './shaft.ts'
import { siOf } from './si.ts'

/** A reduction of a kind as it is stored. */
export type StoredStage<Kind extends StageKindId> = Extract<Stage, { kind: Kind }>

/** What a reduction of any kind has. */
export interface StageCommon {
  readonly ratio: number
  readonly efficiency: number
  /** kg·m² of the driven wheel and shaft. */
  readonly drivenInertia: number
  /** Driven shaft with its wheel; null without both of its entries. */
  readonly shaft: ShaftPart | null
  /** N·m at which a limiter between driven wheel and shaft slips; null without one. */
  readonly slipTorque: number | null
  /** 1/m: pull across both shafts for the torque into the stage. */
  readonly pullPerTorque: number
  /** 0 for a `fixed` stage. */
  readonly driverTeeth: number
  readonly drivenTeeth: number
}

const stageIn = siOf(everyStage)

/**
 * What every kind has: efficiency, driven inertia, and the shaft where both its entries are given.
 *
 * @param hubBearing Pa that the driven wheel's bore may be pressed with, for a gear's
 */
export function commonOf(stage: Stage, hubBearing?: number) {
  const si = stageIn(stage)
  const { shaftMaterial } = stage
  const diameter = si('shaftDiameterMm')
  return {
    efficiency: si('efficiencyPercent'),
    drivenInertia: si('drivenInertiaGcm2'),
    shaft:
      diameter === null || shaftMaterial === undefined
        ? null
        : shaftPartOf(
            {
              diameter,
              material: materialOf(shaftMaterial),
              span: si('shaftSpanMm'),
              overhang: si('shaftOverhangMm'),
              joint: stage.joint === undefined ? null : jointPartOf(stage.joint),
              bearing: stage.bearing === undefined ? null : bearingPartOf(stage.bearing),
            },
            hubBearing,
          ),
    slipTorque: si('slipTorqueNm'),
  }
}

/** Teeth of two wheels and the ratio that they make. */
export function wheelsOf(stage: { driverTeeth: number; drivenTeeth: number }) {
  const { driverTeeth, drivenTeeth } = stage
  return { ratio: drivenTeeth / driverTeeth, driverTeeth, drivenTeeth }
}
