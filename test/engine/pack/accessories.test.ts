import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { accessoryAmpsOf } from '../../../shared-engine/pack/accessories.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { evaluationOf, machineOfStored, readBuildOf } from '../../fixtures/build/machine.ts'

describe('what lamps and pumps draw from a resting pack', () => {
  it('100 W from 20 V through 0.1 Ω: 20 − √360 over 0.2, 5.13 A', () => {
    // 1e-12: closed form, the root written the way that loses digits
    expect(accessoryAmpsOf(100, 20, 0.1)).toBeCloseTo((20 - Math.sqrt(360)) / 0.2, 12)
  })

  it('is the power asked for, at the volts that are left', () => {
    const volts = fc.double({ min: 3, max: 250, noNaN: true })
    const share = fc.double({ min: 1e-9, max: 1, noNaN: true })
    fc.assert(
      fc.property(volts, share, fc.double({ min: 1e-4, max: 5, noNaN: true }), (open, part, resistance) => {
        const power = (part * open * open) / (4 * resistance)
        const amps = accessoryAmpsOf(power, open, resistance)
        // 1e-7: at the most that a pack can give both roots meet, and half of the digits are lost
        expect(Math.abs((open - amps * resistance) * amps - power)).toBeLessThan(1e-7 * power)
        // the smaller root: no more than what would halve the volts
        expect(amps * resistance).toBeLessThanOrEqual(open / 2 + 1e-7 * open)
      }),
    )
  })

  it('is nothing of a pack that feeds nothing', () => {
    expect(accessoryAmpsOf(0, 20, 0.1)).toBe(0)
  })

  it('does not exist where the pack cannot give it', () => {
    expect(accessoryAmpsOf(1001, 20, 0.1)).toBeNaN()
  })
})

describe('accessories of a machine', () => {
  const lamps = { name: 'lamps', watts: 45, volts: 12, converterEfficiencyPercent: 90, converterAmps: 5 }
  const stored = { ...plainBuild(), accessories: [lamps, { name: 'pump', watts: 10 }] }

  it('ask the pack for their watts and what their converters lose: 45/0.9 + 10 = 60 W', () => {
    expect(machineOfStored(stored).accessories.power).toBeCloseTo(60, 12)
  })

  it('draw from the pack as it is: volts left are those of the drive', () => {
    const machine = machineOfStored(stored)
    const { accessoryAmps, driveVolts } = evaluationOf(machine)
    expect(driveVolts * accessoryAmps).toBeCloseTo(60, 9)
    expect(driveVolts).toBeCloseTo(machine.pack.openVolts - accessoryAmps * machine.pack.resistance, 12)
  })

  it('that no pack could feed are a mistake of the build', () => {
    const greedy = { ...stored, accessories: [{ name: 'heater', watts: 20_000 }] }
    expect(() => readBuildOf({ ...greedy, pack: { ...stored.pack, cellResistanceMilliohm: 100 } })).toThrow(
      'accessories',
    )
  })
})
