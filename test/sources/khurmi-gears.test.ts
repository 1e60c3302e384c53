import { describe, expect, it } from 'vitest'
import { contactRatioOf, fewestTeethOf } from '../../shared-engine/stages/gear/geometry.ts'

// *Source:* R. S. Khurmi and J. K. Gupta, *Theory of Machines*, chapter 12: 17 and 49 teeth of 20°, addendum one module.
// The question was read in an open textbook companion; the printed answers are from memory.

const sine = Math.sin(Math.PI / 9)
const cosine = Math.cos(Math.PI / 9)

describe('17 and 49 teeth of 20°', () => {
  const ratio = contactRatioOf({
    driverTeeth: 17,
    drivenTeeth: 49,
    sinPressureAngle: sine,
    cosPressureAngle: cosine,
  })

  it('one pair is in contact while the pinion turns by 34.6°, the wheel by 12°', () => {
    // one pitch of the pinion is 360/17 of a degree; half of the last digit printed
    expect(Math.abs((ratio * 360) / 17 - 34.6)).toBeLessThan(0.05)
    expect(Math.abs((ratio * 360) / 49 - 12)).toBeLessThan(0.05)
  })

  it('and alike with the wheels changed over', () => {
    const turned = { driverTeeth: 49, drivenTeeth: 17, sinPressureAngle: sine, cosPressureAngle: cosine }
    expect(contactRatioOf(turned)).toBeCloseTo(ratio, 14)
  })
})

it('3 to 1, addendum one module, 20°: 45 teeth of the wheel and 15 of the pinion are the fewest', () => {
  // the text's form for the wheel: 2/(√(1 + (1/G)(1/G + 2) sin²φ) − 1) = 44.94
  const wheel = 2 / (Math.sqrt(1 + (1 / 3) * (1 / 3 + 2) * sine * sine) - 1)
  const pinion = fewestTeethOf({ driverTeeth: 15, drivenTeeth: 45, sinPressureAngle: sine })
  expect(Math.ceil(pinion)).toBe(15)
  // 1e-12: two closed forms of one condition
  expect((3 * pinion) / wheel).toBeCloseTo(1, 12)
})
