import { shearOfYield } from '../constants.ts'
import { beltProfileOf, beltWidthExponent } from '../reference/belts.ts'
import { chainSizeOf, strandFactor } from '../reference/chains.ts'
import { lewisFormFactor } from '../reference/gears.ts'
import { materialOf } from '../reference/materials.ts'
import type { BeltStage, ChainStage, FixedStage, GearStage, StagePart } from './machine-parts.ts'
import type { Stage } from './schema.ts'
import { degree, gcm2, milli, percent, scaled } from './si.ts'

type StageOf<K extends Stage['kind']> = Extract<Stage, { kind: K }>

/** One reduction in SI, its tables looked up. */
export function stagePartOf(stage: Stage): StagePart {
  switch (stage.kind) {
    case 'gear':
      return gearPartOf(stage)
    case 'belt':
      return beltPartOf(stage)
    case 'chain':
      return chainPartOf(stage)
    case 'fixed':
      return fixedPartOf(stage)
  }
}

/** What every kind has: efficiency, driven inertia, and the shaft where both its entries are given. */
function commonOf(stage: Stage) {
  const { shaftDiameterMm, shaftMaterial } = stage
  return {
    efficiency: stage.efficiencyPercent * percent,
    drivenInertia: stage.drivenInertiaGcm2 * gcm2,
    shaft:
      shaftDiameterMm === undefined || shaftMaterial === undefined
        ? null
        : { diameter: shaftDiameterMm * milli, allowedShear: shearOfYield * materialOf(shaftMaterial).yield },
  }
}

function wheelsOf(stage: { driverTeeth: number; drivenTeeth: number }) {
  const { driverTeeth, drivenTeeth } = stage
  return { ratio: drivenTeeth / driverTeeth, driverTeeth, drivenTeeth }
}

function gearPartOf(stage: StageOf<'gear'>): GearStage {
  return {
    kind: 'gear',
    ...wheelsOf(stage),
    ...commonOf(stage),
    module: stage.moduleMm * milli,
    faceWidth: stage.faceWidthMm * milli,
    sinPressureAngle: Math.sin(stage.pressureAngleDegrees * degree),
    cosPressureAngle: Math.cos(stage.pressureAngleDegrees * degree),
    finish: stage.finish,
    driverForm: lewisFormFactor(stage.driverTeeth),
    drivenForm: lewisFormFactor(stage.drivenTeeth),
    driverYield: materialOf(stage.driverMaterial).yield,
    drivenYield: materialOf(stage.drivenMaterial).yield,
  }
}

/**
 * A toothed belt; its rating grows with width as (w/w_0)^1.14, its mass in proportion.
 * *Source:* ISO 5295, first edition. A pull given by the builder wins over the table and is for the width used.
 */
function beltPartOf(stage: StageOf<'belt'>): BeltStage {
  const profile = beltProfileOf(stage.profile)
  const width = stage.widthMm * milli
  const relativeWidth = width / profile.referenceWidth
  const tableTension = profile.allowableTension ?? NaN // the build's rules ask for one where the table has none
  return {
    kind: 'belt',
    ...wheelsOf(stage),
    ...commonOf(stage),
    pitch: profile.pitch,
    width,
    centre: stage.centreMm * milli,
    ratedPull: stage.allowableTensionN ?? tableTension * relativeWidth ** beltWidthExponent,
    massPerMetre: profile.massPerMetre * relativeWidth,
  }
}

function chainPartOf(stage: StageOf<'chain'>): ChainStage {
  const size = chainSizeOf(stage.size)
  return {
    kind: 'chain',
    ...wheelsOf(stage),
    ...commonOf(stage),
    pitch: size.pitch,
    strands: stage.strands,
    centre: scaled(stage.centreMm, milli),
    minTensile: size.minTensile,
    massPerMetre: size.massPerMetre * stage.strands,
    strandFactor: strandFactor(stage.strands),
    platesFactor: size.platesFactor,
    rollerFactor: size.rollerFactor,
    pitchInches: size.pitchInches,
    platesTerm: size.platesTerm,
    rollerTerm: size.rollerTerm,
  }
}

function fixedPartOf(stage: StageOf<'fixed'>): FixedStage {
  return { kind: 'fixed', ratio: stage.ratio, driverTeeth: 0, drivenTeeth: 0, ...commonOf(stage) }
}
