import { gearRows } from './entries.ts'
import { elasticCoefficient } from '../../geometry/contact.ts'
import { gearMeshOf, type GearMesh } from '../../geometry/gear-mesh.ts'
import { dynamicFactorRange, lewisFormFactor } from '../../reference/gears.ts'
import { type Material, materialOf } from '../../reference/materials.ts'
import { siOf } from '../../machine/si.ts'
import { commonOf, wheelsOf, type StageCommon, type StoredStage } from '../../machine/stage-common.ts'

/** Strength of the wheel that bears less, and b m Y, m²: force over area is its bending. */
export interface RootStrength {
  readonly area: number
  readonly strength: number
  /** Strength of the driver, named where no torque makes one wheel the worse. */
  readonly driverStrength: number
}

/** A pair of spur gears. */
export interface GearStage extends StageCommon {
  readonly kind: 'gear'
  readonly module: number
  /** Profile shift, in modules. */
  readonly driverShift: number
  readonly drivenShift: number
  /** m, pitch radius. */
  readonly driverRadius: number
  readonly faceWidth: number
  readonly pressureAngle: number
  readonly finish: 'cast' | 'milled' | 'hobbed' | 'ground'
  readonly driverForm: number
  readonly drivenForm: number
  readonly driverMaterial: Material
  readonly drivenMaterial: Material
  /** Roots once, in a mishap, and for good; null where one wheel's material is not judged. */
  readonly once: RootStrength
  readonly mishap: RootStrength
  readonly lasting: RootStrength | null
  /** Lengths in modules. */
  readonly mesh: GearMesh
  /** C_p, √Pa, of both wheels. */
  readonly elasticCoefficient: number
  /** Pa; null where one wheel's flank is not judged. */
  readonly allowedFlank: number | null
  /** m/s of the pitch line up to which the dynamic factor is used. */
  readonly speedRange: number
}

const gearIn = siOf(gearRows)

/** Poisson's ratio: *Source:* `docs/model.md` §6, handbook values. */
const elasticOf = ({ modulus, family }: Material) => ({ modulus, poisson: family === 'metal' ? 0.3 : 0.45 })

type Property = 'yield' | 'tensile' | 'root'

/** A pair of gears in SI. *Source:* `docs/model.md` §4; ISO 21771 and Shigley as in geometry and reference/gears.ts. */
export function gearPartOf(stage: StoredStage<'gear'>): GearStage {
  const si = gearIn(stage)
  const pressureAngle = si('pressureAngleDegrees')
  const { driverShift, drivenShift } = stage
  const wheels = wheelsOf(stage)
  const module = si('moduleMm')
  const faceWidth = si('faceWidthMm')
  const forms = [lewisFormFactor(stage.driverTeeth), lewisFormFactor(stage.drivenTeeth)] as const
  const materials = [materialOf(stage.driverMaterial), materialOf(stage.drivenMaterial)] as const
  const { driverTeeth, drivenTeeth } = wheels
  const mesh = gearMeshOf({ driverTeeth, drivenTeeth, driverShift, drivenShift, pressureAngle })
  const strengths = (property: Property) => rootStrengthOf(faceWidth * module, forms, materials, property)
  const [driver, driven] = materials
  const common = commonOf(stage, driven.bearing * driven.knockdown)
  return {
    kind: 'gear',
    ratio: wheels.ratio,
    driverTeeth,
    drivenTeeth,
    efficiency: common.efficiency,
    drivenInertia: common.drivenInertia,
    shaft: common.shaft,
    slipTorque: common.slipTorque,
    module,
    driverShift,
    drivenShift,
    driverRadius: (module * stage.driverTeeth) / 2,
    pullPerTorque: 1 / (module * mesh.driverBase),
    faceWidth,
    pressureAngle,
    finish: stage.finish,
    driverForm: forms[0],
    drivenForm: forms[1],
    driverMaterial: driver,
    drivenMaterial: driven,
    once: strengths('yield') ?? nothing,
    mishap: strengths('tensile') ?? nothing,
    lasting: strengths('root'),
    mesh,
    elasticCoefficient: elasticCoefficient(elasticOf(driver), elasticOf(driven)),
    allowedFlank: allowedFlankOf(driver, driven),
    speedRange: dynamicFactorRange(stage.finish),
  }
}

const nothing: RootStrength = { area: NaN, strength: NaN, driverStrength: NaN }

/** The wheel that bears less: by form factor times strength, what moulding or printing leaves of it. */
function rootStrengthOf(
  section: number,
  [driverForm, drivenForm]: readonly [number, number],
  [driver, driven]: readonly [Material, Material],
  property: Property,
): RootStrength | null {
  const [one, other] = [driver[property], driven[property]]
  if (one === null || other === null) return null
  const driverStrength = one * driver.knockdown
  const drivenStrength = other * driven.knockdown
  const drivenBearsLess = drivenForm * drivenStrength < driverForm * driverStrength
  return {
    area: section * (drivenBearsLess ? drivenForm : driverForm),
    strength: drivenBearsLess ? drivenStrength : driverStrength,
    driverStrength,
  }
}

/** The lesser of both, where both roots are judged too. */
function allowedFlankOf(driver: Material, driven: Material): number | null {
  if (driver.root === null || driven.root === null) return null
  if (driver.flank === null || driven.flank === null) return null
  return Math.min(driver.flank, driven.flank)
}
