import type { JointPart } from '../machine/joint.ts'
import { keyHeight, keyWidth, screwHolding } from '../reference/joints.ts'
import { materialOf } from '../reference/materials.ts'

/** Shear strength of its yield strength. *Source:* distortion energy. */
const shearOfYield = 0.577
/** Of the yield strength, pressed for good. *Source:* DIN 6892, from memory. */
const pressedOfYield = 0.9
/** What keys are made of here. *Source:* common practice. */
export const keyMaterial = 'steel-c45'
const keyYield = materialOf(keyMaterial).yield

/**
 * Torque that a joint holds once.
 *
 * key: min(0.577 S_k b, min(0.9 S, 0.9 S_k, B) h/2) · L d/2;  screw: count · F · d/2;
 * pin: min(0.577 S_pin (π d_p²/4) d, B d_p d²/2), walls d/2 thick with the arm d/2 [assumption];  clamp: μ F d;
 * flat: min(0.9 S, B) L t (d − t)/3, pressure rising to the edge [assumption].
 *
 * @param diameter d, m of the shaft
 * @param shaftYield S, Pa
 * @param hubBearing B, Pa; Infinity where the hub is not judged
 * @returns N·m
 * *Source:* key: Shigley, sec. 7-7, and DIN 6885, 6892; screw: Shigley, table 7-4; both from memory. Clamp: friction of a
 * split hub, any handbook.
 */
export function jointTorque(
  joint: JointPart,
  diameter: number,
  shaftYield: number,
  hubBearing: number,
): number {
  switch (joint.kind) {
    case 'key': {
      const sheared = shearOfYield * keyYield * keyWidth(diameter)
      const bears = Math.min(pressedOfYield * shaftYield, pressedOfYield * keyYield, hubBearing)
      const pressed = bears * (keyHeight(diameter) / 2)
      return (Math.min(sheared, pressed) * joint.length * diameter) / 2
    }
    case 'screw':
      return (joint.count * screwHolding(joint.screw) * diameter) / 2
    case 'pin': {
      const { pin, pinMaterial } = joint
      const sheared = shearOfYield * pinMaterial.yield * ((Math.PI * pin * pin) / 4) * diameter
      return Math.min(sheared, (hubBearing * pin * diameter * diameter) / 2)
    }
    case 'clamp':
      return joint.friction * joint.force * diameter
    case 'flat': {
      const { length, depth } = joint
      return (Math.min(pressedOfYield * shaftYield, hubBearing) * length * depth * (diameter - depth)) / 3
    }
  }
}
