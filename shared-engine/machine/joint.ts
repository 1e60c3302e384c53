import { joint as jointRows, motorJoint } from '../entries/parts/joint.ts'
import type { Build } from '../entries/schema.ts'
import { materialOf, type Material } from '../reference/materials.ts'
import { siOf } from './si.ts'

type StoredJoint = NonNullable<NonNullable<Build['track']['shaft']>['joint']>
type StoredMotorJoint = NonNullable<Build['motor']['joint']>

/** What keeps a wheel from turning on its shaft: sizes in m, forces in N. */
export type JointPart =
  | { readonly kind: 'key'; readonly length: number }
  | { readonly kind: 'screw'; readonly screw: number; readonly count: number }
  | { readonly kind: 'pin'; readonly pin: number; readonly pinMaterial: Material }
  | { readonly kind: 'clamp'; readonly force: number; readonly friction: number }
  | { readonly kind: 'flat'; readonly length: number; readonly depth: number }

/** The pinion on the motor's shaft, with what that shaft is. */
export interface MotorJointPart {
  readonly joint: JointPart
  /** m, of the motor's shaft. */
  readonly diameter: number
  readonly material: Material
  /** Pa that the pinion's bore may be pressed with; Infinity where it is no gear's. */
  readonly hubBearing: number
}

const { key, screw, pin, clamp, flat } = jointRows.variants
const [keyIn, screwIn, pinIn, clampIn, flatIn] = [siOf(key), siOf(screw), siOf(pin), siOf(clamp), siOf(flat)]
const shaftIn = siOf(motorJoint.variants.key)

/** A joint in SI, its pin's material looked up. */
export function jointPartOf(joint: StoredJoint): JointPart {
  switch (joint.kind) {
    case 'key':
      return { kind: 'key', length: keyIn(joint)('lengthMm') }
    case 'screw':
      return { kind: 'screw', screw: screwIn(joint)('screwMm'), count: joint.count }
    case 'pin':
      return { kind: 'pin', pin: pinIn(joint)('pinMm'), pinMaterial: materialOf(joint.pinMaterial) }
    case 'clamp':
      return { kind: 'clamp', force: clampIn(joint)('clampForceN'), friction: joint.friction }
    case 'flat':
      return { kind: 'flat', length: flatIn(joint)('lengthMm'), depth: flatIn(joint)('flatDepthMm') }
  }
}

/** The joint of the pinion in SI. @param hubBearing Pa that its bore may be pressed with */
export function motorJointPartOf(joint: StoredMotorJoint, hubBearing: number): MotorJointPart {
  return {
    joint: jointPartOf(joint),
    diameter: shaftIn({ shaftDiameterMm: joint.shaftDiameterMm })('shaftDiameterMm'),
    material: materialOf(joint.shaftMaterial),
    hubBearing,
  }
}
