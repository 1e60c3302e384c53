import { describe, expect, it } from 'vitest'
import { fewestTeethOf } from '../../shared-engine/stages/gear/geometry.ts'

const sine = (degrees: number) => Math.sin((degrees * Math.PI) / 180)
const fewest = (driverTeeth: number, drivenTeeth: number, degrees: number) =>
  fewestTeethOf({ driverTeeth, drivenTeeth, sinPressureAngle: sine(degrees) })

/** *Source:* Shigley's Mechanical Engineering Design, sec. 13-7, text and table to eqs. 13-10 to 13-13. From memory. */
describe('fewest pinion teeth without interference, full-depth teeth', () => {
  it('20°, equal wheels: 12.3, so 13', () => {
    // 0.05: printed to one decimal.
    expect(Math.abs(fewest(20, 20, 20) - 12.3)).toBeLessThan(0.05)
  })

  it('20°, ratio of 4: 15.4, so 16', () => {
    expect(Math.abs(fewest(16, 64, 20) - 15.4)).toBeLessThan(0.05)
  })

  // Source: also Norton, Machine Design, table of least pinion teeth on a rack. A ratio of 10,000 stands for the rack.
  it.each([
    [14.5, 32],
    [20, 18],
    [25, 12],
  ])('%d°, on a rack: %d', (degrees, teeth) => {
    expect(Math.ceil(fewest(10, 100_000, degrees))).toBe(teeth)
  })

  // The largest wheel that runs with a pinion of so many teeth, 20°.
  it.each([
    [13, 16],
    [14, 26],
    [15, 45],
    [16, 101],
    [17, 1309],
  ])('a pinion of %d runs with up to %d teeth and with no more', (pinion, largest) => {
    expect(fewest(pinion, largest, 20)).toBeLessThanOrEqual(pinion)
    expect(fewest(pinion, largest + 1, 20)).toBeGreaterThan(pinion)
  })
})
