import { describe, expect, it } from 'vitest'
import { materialOf } from '../../../shared-engine/reference/materials.ts'
import { jointTorque } from '../../../shared-engine/stages/joint.ts'

// Hand calculations of statics; sizes of keys (DIN 6885: 4 by 4 mm for shafts over 10 to 12 mm), shares of yield (DIN 6892)
// and the holding power of set screws (Shigley, table 7-4) from memory.

describe('what a joint holds', () => {
  it('key: the weaker of shear and pressing, at half the diameter', () => {
    const key = { kind: 'key', length: 0.02 } as const
    const sheared = 0.577 * 340e6 * 0.004 * 0.02 * 0.006
    const pressed = 0.9 * 340e6 * 0.002 * 0.02 * 0.006
    expect(jointTorque(key, 0.012, 750e6, Infinity)).toBeCloseTo(Math.min(sheared, pressed), 9)
    expect(jointTorque(key, 0.012, 750e6, 50e6)).toBeCloseTo(50e6 * 0.002 * 0.02 * 0.006, 9)
    // the shaft softer than the key
    expect(jointTorque(key, 0.012, 205e6, Infinity)).toBeCloseTo(0.9 * 205e6 * 0.002 * 0.02 * 0.006, 9)
  })

  it('screws: friction at the shaft’s radius, 1,000 lbf for 1/4 inch, 5,000 for 3/4', () => {
    const quarter = { kind: 'screw', screw: 0.00635, count: 2 } as const
    expect(jointTorque(quarter, 0.008, 400e6, Infinity)).toBeCloseTo(2 * 4448.2216 * 0.004, 3)
    const large = { kind: 'screw', screw: 0.01905, count: 1 } as const
    expect(jointTorque(large, 0.05, 400e6, Infinity)).toBeCloseTo(5 * 4448.2216 * 0.025, 3)
  })

  it('pin: two cut faces, or the hub’s walls', () => {
    const pin = { kind: 'pin', pin: 0.003, pinMaterial: materialOf('silver-steel') } as const
    const sheared = 0.577 * 400e6 * ((Math.PI * 0.003 ** 2) / 4) * 0.01
    expect(jointTorque(pin, 0.01, 750e6, Infinity)).toBeCloseTo(sheared, 9)
    expect(jointTorque(pin, 0.01, 750e6, 20e6)).toBeCloseTo((20e6 * 0.003 * 0.01 ** 2) / 2, 9)
  })

  it('clamp: friction of both halves', () => {
    expect(jointTorque({ kind: 'clamp', force: 4000, friction: 0.15 }, 0.01, 400e6, Infinity)).toBeCloseTo(
      6,
      12,
    )
  })

  it('flat: a triangle of pressure', () => {
    const flat = { kind: 'flat', length: 0.008, depth: 0.0005 } as const
    const torque = (0.9 * 340e6 * 0.008 * 0.0005 * 0.0045) / 3
    expect(jointTorque(flat, 0.005, 340e6, Infinity)).toBeCloseTo(torque, 9)
  })
})
