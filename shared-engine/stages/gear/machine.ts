import { gearRows } from './entries.ts'
import { lewisFormFactor } from '../../reference/gears.ts'
import { materialOf } from '../../reference/materials.ts'
import { siOf } from '../../machine/si.ts'
import { commonOf, wheelsOf, type StageCommon, type StoredStage } from '../../machine/stage-common.ts'
import { contactRatioOf, fewestTeethOf } from './geometry.ts'

/** A pair of spur gears. */
export interface GearStage extends StageCommon {
  readonly kind: 'gear'
  readonly module: number
  /** m, pitch radius. */
  readonly driverRadius: number
  readonly faceWidth: number
  /** Profile shift, in modules. */
  readonly driverShift: number
  readonly drivenShift: number
  readonly sinPressureAngle: number
  readonly cosPressureAngle: number
  readonly finish: 'cast' | 'milled' | 'hobbed' | 'ground'
  readonly driverForm: number
  readonly drivenForm: number
  readonly driverYield: number
  readonly drivenYield: number
  /** b m Y, m², and yield strength of the wheel that bears less: force over area is its bending. */
  readonly bendingArea: number
  readonly bendingYield: number
  readonly contactRatio: number
  /** Fewest teeth of the smaller wheel that clear the larger one's tips; not whole. */
  readonly fewestTeeth: number
}

const gearIn = siOf(gearRows)

/** A pair of gears in SI. *Source:* `docs/model.md` §4; ISO 21771 and Shigley as in geometry.ts and reference/gears.ts. */
export function gearPartOf(stage: StoredStage<'gear'>): GearStage {
  const si = gearIn(stage)
  const pressureAngle = si('pressureAngleDegrees')
  const pair = {
    ...wheelsOf(stage),
    sinPressureAngle: Math.sin(pressureAngle),
    cosPressureAngle: Math.cos(pressureAngle),
  }
  const module = si('moduleMm')
  const faceWidth = si('faceWidthMm')
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
    driverShift: stage.driverShift,
    drivenShift: stage.drivenShift,
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
