import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fromEngine, toEngine, unitKey, unitOf } from '../../../shared-engine/units/convert.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'
import { kindUnits } from '../../../shared-engine/units/table.ts'

const kinds = Object.keys(kindUnits) as QuantityKind[]

describe.each(kinds)('units of %s', (kind) => {
  const { engine, bench, units, metric, imperial } = kindUnits[kind]

  test('the engine unit is the first and changes nothing', () => {
    expect(units[0]).toMatchObject({ symbol: engine, times: 1, per: 1, plus: 0 })
  })

  test('bench and display units are in the table; display steps begin at 0 and rise', () => {
    for (const symbol of [bench, ...[...metric, ...imperial].map((step) => step.symbol)]) {
      expect(units.map((unit) => unit.symbol)).toContain(symbol)
    }
    for (const steps of [metric, imperial]) {
      const froms = steps.map((step) => step.from)
      expect(froms[0]).toBe(0)
      expect(froms).toEqual([...new Set(froms)].sort((a, b) => a - b))
    }
  })

  test('no spelling means two units, and each is read back', () => {
    const spellings = units.flatMap((unit) =>
      [unit.symbol, ...unit.also].map((text) => [unitKey(text), unit] as const),
    )
    for (const [key, unit] of spellings) {
      expect(spellings.filter(([other]) => other === key).every(([, same]) => same === unit)).toBe(true)
      expect(unitOf(kind, key)).toBe(unit)
    }
  })

  test('there and back is the same number', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units),
        fc.double({ min: 1e-9, max: 1e9, noNaN: true }),
        (unit, value) => {
          const back = fromEngine(toEngine(value, kind, unit.symbol), kind, unit.symbol)
          // 4e-16: one rounding each way; a scale's zero adds its own size.
          expect(Math.abs(back - value)).toBeLessThanOrEqual(
            1e-15 * (Math.abs(value) + 500 * Math.sign(Math.abs(unit.plus))),
          )
        },
      ),
      { numRuns: 50 },
    )
  })
})

describe('capitals', () => {
  test('are forgiven where no other size can be meant', () => {
    expect(unitOf('length', 'MM')?.symbol).toBe('mm')
    expect(unitOf('torque', 'nm')?.symbol).toBe('N·m')
    expect(unitOf('charge', 'MAH')?.symbol).toBe('mAh')
  })

  test('matter where mega and milli are both in use', () => {
    expect(unitOf('stress', 'mPa')).toBeNull()
    expect(unitOf('ohms', 'MΩ')).toBeNull()
    expect(unitOf('volts', 'MV')).toBeNull()
  })
})

test('the many ways to write one unit', () => {
  for (const text of ['N·m', 'Nm', 'N m', 'N*m', 'N-m', 'n·M'])
    expect(unitOf('torque', text)?.symbol).toBe('N·m')
  for (const text of ['mΩ', 'mohm', 'm Ω', 'milliohm']) expect(unitOf('ohms', text)?.symbol).toBe('mΩ')
  for (const text of ['µF', 'μF', 'uF', 'UF']) expect(unitOf('capacitance', text)?.symbol).toBe('µF')
  for (const text of ['°C', '° C', 'C', 'deg C']) expect(unitOf('temperature', text)?.symbol).toBe('°C')
  for (const text of ['in', '"', '″', 'inches']) expect(unitOf('length', text)?.symbol).toBe('in')
})
