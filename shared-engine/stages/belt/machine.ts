import { beltRows } from './entries.ts'
import { beltMeshFactor, beltProfileOf, beltWidthExponent } from '../../reference/belts.ts'
import { siOf } from '../../machine/si.ts'
import { commonOf, wheelsOf, type StageCommon, type StoredStage } from '../../machine/stage-common.ts'
import { pulleyRadius, teethInMesh } from './geometry.ts'

/** A toothed belt round two pulleys. */
export interface BeltStage extends StageCommon {
  readonly kind: 'belt'
  readonly pitch: number
  readonly width: number
  readonly centre: number
  /** N, of this width, with six or more teeth in mesh and before the centrifugal part is taken off. */
  readonly ratedPull: number
  /** N, what the teeth in mesh leave of it. */
  readonly meshedPull: number
  /** m, pitch radius. */
  readonly driverRadius: number
  readonly massPerMetre: number
}

/** Pull of both runs of a toothed belt across its shaft, over the useful pull. *Source:* common practice, no source. */
export const beltShaftPull = 1.5

const beltIn = siOf(beltRows)

/**
 * A toothed belt; its rating grows with width as (w/w_0)^1.14, its mass in proportion.
 * *Source:* ISO 5295, first edition. A pull given by the builder wins over the table and is for the width used.
 */
export function beltPartOf(stage: StoredStage<'belt'>): BeltStage {
  const si = beltIn(stage)
  const profile = beltProfileOf(stage.profile)
  const width = si('widthMm')
  const relativeWidth = width / profile.referenceWidth
  const tableTension = profile.allowableTension ?? NaN // the build's rules ask for one where the table has none
  const { ratio, driverTeeth, drivenTeeth } = wheelsOf(stage)
  const common = commonOf(stage)
  const drive = { ratio, driverTeeth, drivenTeeth, pitch: profile.pitch, centre: si('centreMm') }
  const driverRadius = pulleyRadius(profile.pitch, stage.driverTeeth)
  const ratedPull = si('allowableTensionN') ?? tableTension * relativeWidth ** beltWidthExponent
  return {
    kind: 'belt',
    ratio,
    driverTeeth,
    drivenTeeth,
    pitch: drive.pitch,
    centre: drive.centre,
    efficiency: common.efficiency,
    drivenInertia: common.drivenInertia,
    shaft: common.shaft,
    slipTorque: common.slipTorque,
    width,
    ratedPull,
    meshedPull: beltMeshFactor(teethInMesh(drive)) * ratedPull,
    driverRadius,
    pullPerTorque: beltShaftPull / driverRadius,
    massPerMetre: profile.massPerMetre * relativeWidth,
  }
}
