import { shearOfYield } from '../constants.ts'
import { pulleyRadius, teethInMesh } from '../stages/belt/geometry.ts'
import { chainWheelRadius } from '../stages/chain/geometry.ts'
import { contactRatioOf, fewestTeethOf } from '../stages/gear/geometry.ts'
import { beltMeshFactor, beltProfileOf, beltWidthExponent } from '../reference/belts.ts'
import { chainSizeOf, strandFactor } from '../reference/chains.ts'
import { lewisFormFactor } from '../reference/gears.ts'
import { materialOf } from '../reference/materials.ts'
import type { BeltStage, ChainStage, FixedStage, GearStage, StagePart } from './parts.ts'
import type { Stage } from '../entries/schema.ts'
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
  const pair = {
    ...wheelsOf(stage),
    sinPressureAngle: Math.sin(stage.pressureAngleDegrees * degree),
    cosPressureAngle: Math.cos(stage.pressureAngleDegrees * degree),
  }
  const module = stage.moduleMm * milli
  const faceWidth = stage.faceWidthMm * milli
  const driverForm = lewisFormFactor(stage.driverTeeth)
  const drivenForm = lewisFormFactor(stage.drivenTeeth)
  const driverYield = materialOf(stage.driverMaterial).yield
  const drivenYield = materialOf(stage.drivenMaterial).yield
  const drivenBearsLess = drivenForm * drivenYield < driverForm * driverYield
  return {
    kind: 'gear',
    ...pair,
    ...commonOf(stage),
    module,
    driverRadius: (module * stage.driverTeeth) / 2,
    faceWidth,
    finish: stage.finish,
    driverForm,
    drivenForm,
    driverYield,
    drivenYield,
    bendingArea: faceWidth * module * (drivenBearsLess ? drivenForm : driverForm),
    bendingYield: drivenBearsLess ? drivenYield : driverYield,
    contactRatio: contactRatioOf(pair),
    fewestTeeth: fewestTeethOf(pair),
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
  const drive = { ...wheelsOf(stage), pitch: profile.pitch, centre: stage.centreMm * milli }
  const ratedPull = stage.allowableTensionN ?? tableTension * relativeWidth ** beltWidthExponent
  return {
    kind: 'belt',
    ...drive,
    ...commonOf(stage),
    width,
    ratedPull,
    meshedPull: beltMeshFactor(teethInMesh(drive)) * ratedPull,
    driverRadius: pulleyRadius(profile.pitch, stage.driverTeeth),
    massPerMetre: profile.massPerMetre * relativeWidth,
  }
}

function chainPartOf(stage: StageOf<'chain'>): ChainStage {
  const size = chainSizeOf(stage.size)
  const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
  return {
    kind: 'chain',
    ...wheelsOf(stage),
    ...commonOf(stage),
    pitch: size.pitch,
    driverRadius: chainWheelRadius(size.pitch, stage.driverTeeth),
    strands: stage.strands,
    centre: scaled(stage.centreMm, milli),
    minTensile: size.minTensile,
    massPerMetre: size.massPerMetre * stage.strands,
    strandFactor: strandFactor(stage.strands),
    platesFactor: size.platesFactor,
    rollerFactor: size.rollerFactor,
    pitchInches: size.pitchInches,
    smallerTurns: stage.driverTeeth / smaller,
    platesTerm: size.platesTerm * smaller ** 1.08,
    rollerTerm: size.rollerTerm * smaller ** 1.5,
  }
}

function fixedPartOf(stage: StageOf<'fixed'>): FixedStage {
  return { kind: 'fixed', ratio: stage.ratio, driverTeeth: 0, drivenTeeth: 0, ...commonOf(stage) }
}
