import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { validationFile } from '../../scripts/validation.ts'
import { validationCases } from '../../scripts/validation/case.ts'
import { validationPage } from '../../scripts/validation/page.ts'
import { computations } from '../../scripts/validation/table.ts'
import { directionOf, errorOf, rangeError, shown } from '../../scripts/validation/words.ts'

const cases = validationCases()

it('the page is what the engine says of the inputs today: `node scripts/run.js validation` where this is on purpose', () => {
  expect(readFileSync(validationFile, 'utf8')).toBe(validationPage(cases))
})

it('has no figure that is none', () => {
  expect(validationPage(cases)).not.toMatch(/NaN|Infinity|undefined|null/)
})

it('every case with inputs is computed, and nothing is computed of no case', () => {
  const withInputs = cases.filter(({ inputs }) => inputs !== null).map(({ id }) => id)
  expect(withInputs.toSorted()).toEqual(Object.keys(computations).toSorted())
  expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length)
})

it('moves with what is put in', () => {
  const moved = cases.map((one) =>
    one.id === 'cold-capacity' && one.inputs !== null
      ? { ...one, inputs: { ...one.inputs, celsius: 25 } }
      : one,
  )
  expect(validationPage(moved)).not.toBe(validationPage(cases))
})

it('takes no input that a case does not know', () => {
  expect(() => computations['air']?.({ altitudeM: 0, celsius: 15, density: 1.225, odd: 1 })).toThrow('odd')
})

describe('words', () => {
  it('an error is the program’s over the measured, to a percent from ten on', () => {
    expect(errorOf(110.4, 100)).toBe('+10 %')
    expect(errorOf(95.04, 100)).toBe('−5 %')
    expect(errorOf(100.01, 100)).toBe('0 %')
  })

  it('a range counts from its nearer end', () => {
    expect(rangeError(1, 2, 4)).toEqual([1, 2])
    expect(rangeError(5, 2, 4)).toEqual([5, 4])
    expect(rangeError(3, 2, 4)).toEqual([3, 3])
  })

  it('a direction is that of all figures', () => {
    expect(directionOf([[1, 2]], 'low', 'high')).toBe('low')
    expect(directionOf([[3, 2]], 'low', 'high')).toBe('high')
    expect(directionOf([[2, 2]], 'low', 'high')).toBe('none')
    expect(
      directionOf(
        [
          [1, 2],
          [3, 2],
        ],
        'low',
        'high',
      ),
    ).toBe('either way')
  })

  it('numbers have the figures asked for', () => {
    expect(shown(0.12345)).toBe('0.123')
    expect(shown(-1234.5, 4)).toBe('−1,235')
  })
})
