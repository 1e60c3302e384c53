import type { Material } from '../reference/materials.ts'
import type { BearingPart } from './bearing.ts'
import type { JointPart } from './joint.ts'

/** A shaft with the wheel that sits on it. */
export interface ShaftPart {
  readonly diameter: number
  readonly material: Material
  /** m by which a pull on the wheel bends it: a quarter of the span, or the overhang; 0 where neither is known. */
  readonly arm: number
  /** Where the wheel sits: midway between two bearings, or beyond the last one. */
  readonly seat: 'between' | 'beyond' | 'unknown'
  readonly joint: JointPart | null
  /** Pa that the wheel's bore may be pressed with; Infinity where the hub is not judged. */
  readonly hubBearing: number
  readonly bearing: BearingPart | null
}

/** A shaft as its entries give it, lengths in m. */
interface GivenShaft {
  readonly diameter: number
  readonly material: Material
  readonly span: number | null
  readonly overhang: number | null
  readonly joint: JointPart | null
  readonly bearing: BearingPart | null
}

/**
 * A shaft, its seat worked out: the span wins over the overhang.
 *
 * @param hubBearing Pa; Infinity where the hub is not judged
 * *Source:* statics of a beam on two supports: M = Q span/4 or Q overhang.
 */
export function shaftPartOf(given: GivenShaft, hubBearing = Infinity): ShaftPart {
  const { diameter, material, span, overhang, joint, bearing } = given
  const seat = span !== null ? 'between' : overhang !== null ? 'beyond' : 'unknown'
  const arm = span !== null ? span / 4 : (overhang ?? 0)
  return { diameter, material, arm, seat, joint, hubBearing, bearing }
}
