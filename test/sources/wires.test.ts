import { describe, expect, it } from 'vitest'
import { gaugeArea, insulatedDiameter, wireResistance } from '../../shared-engine/geometry/wire.ts'
import {
  ampacityOf,
  fusingAmpsOf,
  steadyWireTemperature,
  wireTemperatureAfter,
} from '../../shared-engine/heat/wire.ts'
import { solvedByOdex } from '../engine/numeric/odex.ts'

const mm2 = 1e-6

describe('ASTM B258, nominal diameters of American wire gauges (its table, from memory)', () => {
  it.each([
    [-3, 11.684],
    [0, 8.251],
    [10, 2.588],
    [12, 2.053],
    [18, 1.024],
    [36, 0.127],
    [40, 0.07987],
  ])('gauge %s is %s mm', (gauge, millimetres) => {
    const diameter = Math.sqrt((4 * gaugeArea(gauge)) / Math.PI / mm2)
    // Half of the last printed digit.
    expect(Math.abs(diameter - millimetres)).toBeLessThan(millimetres < 0.1 ? 5e-6 : 5e-4)
  })
})

describe('resistance of annealed copper at 20 °C', () => {
  it('IEC 60028: 1 m of 1 mm² has 1/58 Ω', () => {
    // 3e-5: the standard rounds it to 0.017241 Ω mm²/m, half of whose last digit this is.
    expect(Math.abs(wireResistance(mm2, 1, 1) * 58 - 1)).toBeLessThan(3e-5)
  })

  it('ASTM B258 with B3, from memory: gauge 10 has 0.9989 Ω for 1000 ft', () => {
    // 2e-4: printed to four figures.
    expect(Math.abs(wireResistance(gaugeArea(10), 304.8, 1) / 0.9989 - 1)).toBeLessThan(2e-4)
  })

  it('two side by side have half', () => {
    expect(wireResistance(mm2, 3, 2)).toBe(wireResistance(mm2, 3, 1) / 2)
  })
})

describe('a single cable in free air, BS 7671 table 4D1A (that of IEC 60364-5-52, method G)', () => {
  it('25 mm² in PVC at 70 °C in air of 30 °C carries 146 A', () => {
    // An outside diameter of 8.6 mm: a stranded conductor of 25 mm² with 1.2 mm of insulation, IEC 60227.
    // 10 %: the table is for three cables, each a diameter apart and with losses of alternating current.
    const amps = ampacityOf({ area: 25 * mm2, outside: 8.6e-3 }, 70, 30)
    expect(Math.abs(amps / 146 - 1)).toBeLessThan(0.1)
  })
})

describe('adiabatic warming, IEC 60949', () => {
  // k of IEC 60364-5-54, tables A.54.2 to A.54.6, from memory, rounded there to whole numbers.
  it.each([
    [30, 160, 143],
    [70, 160, 115],
    [30, 250, 176],
    [90, 250, 143],
  ])('from %s to %s °C takes I²t = (%s S)²', (start, end, k) => {
    expect(Math.abs(wireTemperatureAfter(mm2, start, k, 1) / end - 1)).toBeLessThan(0.01)
  })

  it('is where a conductor without cooling comes to, its resistance growing: solved by odex', () => {
    // β of IEC 60949 is 234.5 K and K² = σ_c (β + 20)/ρ_20 with σ_c = 3.45e6 J/(m³·K).
    const density = 60 / mm2
    const slope = (celsius: number) => (density ** 2 * 1.7241e-8 * (1 + (celsius - 20) / 254.5)) / 3.45e6
    const [reached] = solvedByOdex((_, [celsius = NaN]) => [slope(celsius)], 0, [30], 5)
    // 0.5 %: K is printed as 226.
    const after = wireTemperatureAfter(mm2, 30, 60, 5)
    expect(Math.abs((after - 30) / ((reached ?? NaN) - 30) - 1)).toBeLessThan(5e-3)
  })
})

describe('Onderdonk’s fusing current', () => {
  it('is the adiabatic law of IEC 60949 up to copper’s melting point', () => {
    for (const seconds of [0.1, 1, 5]) {
      const amps = fusingAmpsOf(mm2, 25, seconds)
      // 1 %: Onderdonk's 33 and 234 are rounded.
      expect(Math.abs(wireTemperatureAfter(mm2, 25, amps, seconds) / 1083 - 1)).toBeLessThan(0.01)
    }
  })

  it('16 gauge, 2581 circular mils, for 5 s at 25 °C: 169 A, as the formula gives by hand', () => {
    // 2581 √(log₁₀(1058/259 + 1)/(33 · 5)); with 234 − T, as it is often misprinted, it would be 178 A.
    expect(fusingAmpsOf(gaugeArea(16), 25, 5)).toBeCloseTo(168.9, 0)
  })
})

describe('the steady temperature', () => {
  it('is where a warming conductor comes to rest: solved by odex', () => {
    const conductor = { area: 2 * mm2, outside: insulatedDiameter(2 * mm2) }
    const given = Math.PI * conductor.outside * (0.21 / conductor.outside ** 0.6 + 3.94)
    const slope = (celsius: number) =>
      ((30 * 30 * 1.7241e-8 * (1 + 0.00393 * (celsius - 20))) / conductor.area -
        given * Math.max(0, celsius + 5) ** 1.25) /
      10
    const [settled] = solvedByOdex((_, [celsius = NaN]) => [slope(celsius)], 0, [-5], 5000)
    // 1e-7: odex at its default tolerance.
    expect(Math.abs(steadyWireTemperature(conductor, 30, -5) / (settled ?? NaN) - 1)).toBeLessThan(1e-7)
  })

  it('is the air’s without current, and the limit at the ampacity', () => {
    const conductor = { area: mm2, outside: insulatedDiameter(mm2) }
    expect(steadyWireTemperature(conductor, 0, 21)).toBe(21)
    const amps = ampacityOf(conductor, 105, 21)
    // 1e-12: one formula, solved both ways.
    expect(Math.abs(steadyWireTemperature(conductor, amps, 21) / 105 - 1)).toBeLessThan(1e-12)
    expect(ampacityOf(conductor, 20, 21)).toBe(0)
  })
})
