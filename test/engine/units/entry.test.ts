import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import { readEntry } from '../../../shared-engine/units/entry.ts'
import type { EntryPlace, EntryReading } from '../../../shared-engine/units/entry.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'
import { kindUnits } from '../../../shared-engine/units/table.ts'

function read(typed: string, kind: QuantityKind = 'length', place: EntryPlace = {}): EntryReading {
  const result = readEntry(typed, kind, place)
  if (!result.ok) throw new Error(result.mistakes.map(sentenceOf).join('\n'))
  return result.value
}

function refusal(typed: string, kind: QuantityKind = 'length', place: EntryPlace = {}): string {
  const result = readEntry(typed, kind, place)
  return result.ok ? `read as ${result.value.value}` : result.mistakes.map(sentenceOf).join('\n')
}

describe('lengths in any unit, bare numbers in mm', () => {
  test.each([
    ['25.4', 0.0254, 'mm'],
    ['1 in', 0.0254, 'in'],
    ['1"', 0.0254, 'in'],
    ['3/8 in', 0.009525, 'in'],
    ['1 3/8 in', 0.034925, 'in'],
    ['12+4', 0.016, 'mm'],
    ['(12 + 4)*2 mm', 0.032, 'mm'],
    ['2×3', 0.006, 'mm'],
    ['7 − 2', 0.005, 'mm'],
    ['-5', -0.005, 'mm'],
    ['.5 cm', 0.005, 'cm'],
    ['1e3', 1, 'mm'],
    ['1,5', 0.0015, 'mm'],
    ['0,125', 0.000125, 'mm'],
    ['1,234.5', 1.2345, 'mm'],
    ['1.234,5', 1.2345, 'mm'],
    ['1,234,567', 1234.567, 'mm'],
    ['31 400', 31.4, 'mm'],
    ['1 MM', 0.001, 'mm'],
  ])('%s', (typed, value, unit) => {
    expect(read(typed)).toEqual({ value, text: typed, unit })
  })

  test('sums of several units', () => {
    // 1e-15: two roundings of the sum.
    expect(read('1 in + 3 mm').value).toBeCloseTo(0.0284, 15)
    expect(read('1in-3mm')).toMatchObject({ unit: 'in' })
    expect(read('1in-3mm').value).toBeCloseTo(0.0224, 15)
  })

  test('a bare number is in the unit of its place', () => {
    expect(read('2', 'length', { unit: 'in' })).toEqual({ value: 0.0508, text: '2', unit: 'in' })
  })
})

test('other kinds', () => {
  expect(read('0.8 Nm', 'torque').value).toBe(0.8)
  expect(read('12+4 °F', 'temperature').value).toBeCloseTo(-80 / 9, 14)
  expect(read('3300 rpm/V', 'speedConstant').value).toBe(3300)
  expect(read('20 C', 'cRate').unit).toBe('C')
  expect(read('60 N/(m/s)', 'dragPerSpeed').value).toBe(60)
  expect(read('3 kN/m^(n+1)', 'soilCohesiveModulus').value).toBe(3000)
  expect(read('3 %', 'none').value).toBe(0.03)
  expect(read('97', 'fraction').value).toBe(0.97)
})

describe('tolerances', () => {
  test.each([
    ['40 ± 5 %', { plusMinusPercent: 5 }],
    ['40 +- 5%', { plusMinusPercent: 5 }],
    ['40 +/- 2,5 %', { plusMinusPercent: 2.5 }],
    ['9 +- 0.2 mm', { plusMinus: 0.0002 }],
    ['9 mm ± 0.2', { plusMinus: 0.0002 }],
  ])('%s', (typed, tolerance) => {
    expect(read(typed).tolerance).toEqual(tolerance)
  })

  test('the unit behind a tolerance is the value’s too where that has none', () => {
    expect(read('9 ± 0.2 in')).toEqual({
      value: 0.2286,
      text: '9 ± 0.2 in',
      unit: 'in',
      tolerance: { plusMinus: 0.00508 },
    })
  })

  test('a temperature’s tolerance is a difference, without the scale’s zero', () => {
    // 1e-15: one division.
    expect(read('70 °F ± 9', 'temperature').tolerance).toEqual({ plusMinus: 5 })
  })

  test('of an entry in % it has to say of what', () => {
    expect(refusal('60 % ± 5 %', 'fraction')).toBe(
      '“± 5 %” can be read in two ways; allowed: ± 5 % of it, or ± 5 % points.',
    )
    expect(read('60 % ± 5 % of it', 'fraction').tolerance).toEqual({ plusMinusPercent: 5 })
    expect(read('60 ± 5 % points', 'fraction').tolerance).toEqual({ plusMinus: 0.05 })
    expect(read('60 ± 5', 'fraction').tolerance).toEqual({ plusMinus: 0.05 })
  })
})

describe('refusals', () => {
  test('a comma with two readings asks which', () => {
    expect(refusal('1,234', 'length', { path: 'track.pitchMm', kept: '25 mm' })).toBe(
      '“1,234” can be read in two ways; allowed: 1.234 with a decimal point, or 1234 without a comma. Kept: 25 mm.',
    )
  })

  test('a unit of another kind says which are read', () => {
    expect(refusal('5 kg')).toBe('“kg” is not a unit of this entry; allowed: mm, m, cm, in, ft, mil.')
    expect(refusal('1.5k')).toBe('“k” is not a unit of this entry; allowed: mm, m, cm, in, ft, mil.')
    expect(refusal('5 mm', 'count')).toBe('“mm” is not a unit of this entry; allowed: a plain number.')
  })

  test.each([
    '',
    ' ',
    'abc',
    'NaN',
    'Infinity',
    '1e999',
    '1/0',
    '0/0',
    '1 2',
    '1..2',
    '1,2,3',
    '((1)',
    '1)',
    'mm',
    '±5%',
    '1 ± 2 ± 3',
    '9 ± -1',
    '3 mm/2',
    '1 in * 2',
    '1 3/0 in',
    '++',
    '1 °F + 3 °C',
    '５ ５',
    '9'.repeat(201),
    '('.repeat(200),
    '1 \u0000',
  ])('%j is not read as a number', (typed) => {
    expect(refusal(typed, typed.includes('°') ? 'temperature' : 'length')).toMatch(
      /is not understood|is not a unit/,
    )
  })

  test('whatever is typed gives a finite number or one line', () => {
    const kinds = (Object.keys(kindUnits) as QuantityKind[]).filter((kind) => kind !== 'text')
    const pieces = fc.constantFrom(
      '1',
      '23',
      '1,234',
      '.5',
      ' ',
      '+',
      '-',
      '*',
      '/',
      '(',
      ')',
      'mm',
      'in',
      '%',
      '±',
      '°',
      'e9',
      ',',
      '\n',
    )
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.oneof(
          fc.string(),
          fc.array(pieces).map((list) => list.join('')),
        ),
        (kind, typed) => {
          const result = readEntry(typed, kind)
          if (result.ok) {
            expect(Number.isFinite(result.value.value)).toBe(true)
            expect(kindUnits[kind].units.map((unit) => unit.symbol)).toContain(result.value.unit)
          } else {
            expect(result.mistakes).toHaveLength(1)
            expect(result.mistakes.map(sentenceOf).join('')).not.toMatch(/\n/)
          }
        },
      ),
      { numRuns: 500 },
    )
  })
})
