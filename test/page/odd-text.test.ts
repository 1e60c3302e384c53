import { expect, it } from 'vitest'
import { oddIn, rawKeyIn } from '../fixtures/text/odd.ts'

it.each([
  ['NaN km/h', ['NaN']],
  ['up to Infinity', ['Infinity']],
  ['undefined of null', ['undefined']],
  ['[object Object]', ['[object']],
  ['−0 N', ['−0']],
  ['-0', ['-0']],
  ['at −0.00 °C', ['−0.00']],
  ['38.2000001 km/h', ['38.2000001']],
  ['0.30000000000000004', ['0.30000000000000004']],
  ['1,234,567 rpm', ['1,234,567']],
  ['Nine times in ten 170 to 170 % over', ['170 to 170']],
  ['Time 0.1559\u202Fh', ['0.1559\u202Fh']],
  ['9,930\u202Fm to the reserve', ['9,930\u202Fm']],
])('%s may not be shown', (text, odd) => {
  expect(oddIn(text)).toEqual(odd)
})

it.each([
  '12,345 rpm',
  '0.000123456',
  '1,230,000 J',
  '−0.5 °C',
  '−0,5',
  '10-0 in',
  'Cannot be annulled; nullify',
  '1.23 × 10⁻⁷',
  '23456.7',
  '17 to 170 %',
  '170 to 170.4 %',
  '0.5 hours of it',
  '2.05 h',
  '930 m',
  '1,200 mm',
  '1,200 m/s',
])('%s may', (text) => {
  expect(oddIn(text)).toEqual([])
})

it('a key of the file is found in a sentence, a name is none', () => {
  expect(rawKeyIn('Without motor.heatCapacityJPerK it is held')).toBe('motor.heatCapacityJPerK')
  expect(rawKeyIn('vary.stages.0.driverTeeth.to is 9, out of range')).toBe('vary.stages.0.driverTeeth.to')
  expect(rawKeyIn('stages.0.joint (Reduction 1)')).toBe('stages.0.joint')
  expect(rawKeyIn('track.pitch')).toBe('track.pitch')
  expect(rawKeyIn('Give the motor. Then ease it; saved in sled.build.json')).toBeNull()
})
