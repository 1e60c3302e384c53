import { expect, it } from 'vitest'
import { contactRatioOf } from '../../shared-engine/stages/gear/geometry.ts'

it('19 and 37 full-depth teeth of 20°: a contact ratio of 1.62', () => {
  // Source: Norton, Machine Design: An Integrated Approach, example 12-1. From memory.
  const angle = (20 * Math.PI) / 180
  const ratio = contactRatioOf({
    driverTeeth: 19,
    drivenTeeth: 37,
    sinPressureAngle: Math.sin(angle),
    cosPressureAngle: Math.cos(angle),
  })
  // 0.005: printed to three digits.
  expect(Math.abs(ratio - 1.62)).toBeLessThan(0.005)
})
