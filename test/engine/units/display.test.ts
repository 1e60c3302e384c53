import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toEngine } from '../../../shared-engine/units/convert.ts'
import {
  displayUnit,
  format,
  formatFull,
  formatText,
  formatTo,
  numberText,
} from '../../../shared-engine/units/display.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'
import { kindUnits } from '../../../shared-engine/units/table.ts'

const kinds = Object.keys(kindUnits) as QuantityKind[]

describe('numbers on the screen', () => {
  test.each([
    [31416, '31,400'],
    [12345, '12,350'],
    [1234, '1,234'],
    [999.6, '1,000'],
    [38.24, '38.2'],
    [10.456, '10.46'],
    [9.996, '10.0'],
    [0.12345, '0.1235'],
    [-4.567, '−4.57'],
    [0, '0'],
    [-0, '0'],
    [0.0001234, '1.23 × 10⁻⁴'],
    [12_345_678, '1.23 × 10⁷'],
    [null, '–'],
    [NaN, '–'],
    [-Infinity, '–'],
  ])('%s is %s', (value, text) => {
    expect(numberText(value)).toBe(text)
  })

  test('any double is short and is a number or a dash', () => {
    fc.assert(
      fc.property(
        fc.double(),
        fc.constantFrom(...kinds),
        fc.constantFrom('metric', 'imperial'),
        (value, kind, system) => {
          const { text, unit } = format(value, kind, system)
          expect(text).toMatch(/^(–|−?[\d,]+(\.\d+)?( × 10⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)?)$/)
          expect(text).not.toMatch(/^−0(\.0*)?$/)
          expect(text.length).toBeLessThanOrEqual(15)
          expect(unit.length).toBeLessThanOrEqual(12)
        },
      ),
    )
  })

  test('what is shown is within 0.5 % of the value', () => {
    // 0.5 %: three figures of which the first is at least 2, or four.
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 9.9e6, noNaN: true }), (value) => {
        const shown = Number(numberText(value).replaceAll(',', ''))
        expect(Math.abs(shown / value - 1)).toBeLessThanOrEqual(0.005)
      }),
    )
  })
})

describe('units on the screen', () => {
  test('metric and imperial', () => {
    expect(formatText(10.61, 'speed', 'metric')).toBe('38.2\u202Fkm/h')
    expect(formatText(10.61, 'speed', 'imperial')).toBe('23.7\u202Fmph')
    expect(formatText(0.0254, 'length', 'imperial')).toBe('1.000\u202Fin')
    expect(formatText(45e6, 'stress', 'metric')).toBe('45.0\u202FMPa')
    expect(formatText(100, 'temperature', 'imperial')).toBe('212\u202F°F')
    expect(formatText(0.12, 'fraction', 'metric')).toBe('12.00\u202F%')
    expect(formatText(Math.PI / 6, 'angle', 'metric')).toBe('30.0°')
  })

  test('a gear is named by its module in mm whatever the rest is in (ISO 54)', () => {
    expect(formatText(0.0015, 'gearModule', 'metric')).toBe('1.500\u202Fmm')
    expect(formatText(0.0015, 'gearModule', 'imperial')).toBe('1.500\u202Fmm')
  })

  test('the larger unit from where it reads better', () => {
    expect(displayUnit('distance', 'metric', 999)).toBe('m')
    expect(displayUnit('distance', 'metric', 1000)).toBe('km')
    expect(displayUnit('time', 'metric', -700)).toBe('min')
  })

  test('counts are whole', () => {
    expect(format(12345, 'count', 'metric').text).toBe('12,345')
  })
})

test('the full value reads back as the number it was', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e12, noNaN: true }), (value) => {
      const { text, unit } = formatFull(value, 'force', 'imperial')
      // 1e-14: fifteen figures, times the factor's rounding.
      expect(Math.abs(toEngine(Number(text), 'force', unit) - value)).toBeLessThanOrEqual(
        1e-14 * Math.abs(value),
      )
    }),
  )
  expect(formatFull(0.1 + 0.2, 'none', 'metric').text).toBe('0.3')
  expect(formatFull(31416, 'rpm', 'metric')).toEqual({ text: '31416', unit: 'rpm' })
  expect(formatFull(-0, 'rpm', 'metric').text).toBe('0')
})

test('shows no more figures than are known, and the same unit', () => {
  // 5.52 m/s: 19.872 km/h by the definition of km/h.
  expect(formatTo(5.52, 'speed', 'metric', 2)).toEqual({ text: '20', unit: 'km/h' })
  expect(formatTo(5.52, 'speed', 'metric', 3)).toEqual({ text: '19.9', unit: 'km/h' })
  expect(formatTo(17_430, 'none', 'metric', 2).text).toBe('17,000')
  expect(formatTo(null, 'speed', 'metric', 2).text).toBe('–')
  expect(formatTo(0, 'speed', 'metric', 2).text).toBe('0')
})
