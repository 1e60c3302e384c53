import { describe, expect, it } from 'vitest'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored } from '../../fixtures/build/machine.ts'

const plain = plainBuild()
const packOf = (pack: object, service: object = {}) =>
  machineOfStored({ ...plain, pack: { ...plain.pack, ...pack }, service }).pack

describe('a pack in SI', () => {
  it('adds cells in a row and shares them side by side: 6 · 2 mΩ/3 + 1.5 mΩ at 25 °C', () => {
    const { resistance } = packOf({ parallel: 3, wiringResistanceMilliohm: 1.5 }, { packTemperatureC: 25 })
    // 12 digits: closed form
    expect(resistance).toBeCloseTo(0.0055, 12)
  })

  it('doubles its cells’ resistance, not the wires’, for 20 K of cold: common practice, no source', () => {
    const warm = packOf({ wiringResistanceMilliohm: 1.5 }, { packTemperatureC: 25 }).resistance
    const cold = packOf({ wiringResistanceMilliohm: 1.5 }, { packTemperatureC: 5 }).resistance
    expect(cold - 0.0015).toBeCloseTo(2 * (warm - 0.0015), 12)
  })

  it('no more than at −20 °C and no less than at 45 °C', () => {
    const at = (packTemperatureC: number) => packOf({}, { packTemperatureC }).resistance
    expect(at(-40)).toBe(at(-20))
    expect(at(70)).toBe(at(45))
    expect(at(45)).toBeLessThan(at(44))
  })

  it('rests at 25.2 V full and less at half charge: 6 cells of 4.2 V', () => {
    const { openVolts, fullVolts } = packOf({}, { stateOfChargePercent: 50 })
    expect(fullVolts).toBeCloseTo(25.2, 12)
    expect(openVolts).toBeLessThan(fullVolts)
  })

  it('5 Ah at 20 C continuous and 40 C burst: 100 A and 200 A, 18,000 C', () => {
    const { capacity, continuousAmps, burstAmps } = packOf({ continuousC: 20, burstC: 40 })
    expect([capacity, continuousAmps, burstAmps]).toEqual([18_000, 100, 200])
  })
})
