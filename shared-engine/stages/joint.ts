/** How a wheel sits on its shaft, in SI. */
export type JointPart =
  | {
      readonly kind: 'key'
      readonly length: number
      readonly width: number
      readonly height: number
      readonly keyYield: number
    }
  | { readonly kind: 'screw'; readonly count: number; readonly holding: number }
  | { readonly kind: 'pin'; readonly pin: number; readonly pinYield: number }
  | { readonly kind: 'clamp'; readonly force: number; readonly friction: number }
  | { readonly kind: 'flat'; readonly length: number; readonly depth: number }

export type JointKind = JointPart['kind']
type JointOf<K extends JointKind> = Extract<JointPart, { kind: K }>

/** Shear strength of its yield strength. *Source:* distortion energy. */
const shearOfYield = 0.577
/** Of the yield strength, pressed for good. *Source:* DIN 6892, from memory. */
const pressedOfYield = 0.9

/** What a shaft and the hub's bore bear. */
interface Seat {
  /** d, m. */
  readonly diameter: number
  /** S, Pa, yield of the shaft. */
  readonly shaftYield: number
  /** B, Pa, what the bore may be pressed with; Infinity where the hub is not judged. */
  readonly hubBearing: number
}

const holds: { readonly [K in JointKind]: (joint: JointOf<K>, seat: Seat) => number } = {
  key: ({ length, width, height, keyYield }, { diameter, shaftYield, hubBearing }) => {
    const sheared = shearOfYield * keyYield * width
    const pressed =
      Math.min(pressedOfYield * shaftYield, pressedOfYield * keyYield, hubBearing) * (height / 2)
    return (Math.min(sheared, pressed) * length * diameter) / 2
  },
  screw: ({ count, holding }, { diameter }) => (count * holding * diameter) / 2,
  pin: ({ pin, pinYield }, { diameter, hubBearing }) => {
    const sheared = shearOfYield * pinYield * ((Math.PI * pin * pin) / 4) * diameter
    return Math.min(sheared, (hubBearing * pin * diameter * diameter) / 2)
  },
  clamp: ({ force, friction }, { diameter }) => friction * force * diameter,
  flat: ({ length, depth }, { diameter, shaftYield, hubBearing }) =>
    (Math.min(pressedOfYield * shaftYield, hubBearing) * length * depth * (diameter - depth)) / 3,
}

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
 * *Source:* key: Shigley, sec. 7-7, and DIN 6892; screw: Shigley, table 7-4; both from memory. Clamp: friction of a
 * split hub, any handbook.
 */
export function jointTorque(
  joint: JointPart,
  diameter: number,
  shaftYield: number,
  hubBearing: number,
): number {
  const hold = holds[joint.kind] as (joint: JointPart, seat: Seat) => number
  return hold(joint, { diameter, shaftYield, hubBearing })
}
