import { describe, expect, test } from 'vitest'
import { pastedTable, typedList, typedNumber } from '../../../shared-engine/measure/typed.ts'

describe('numbers of a bench form', () => {
  test.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' −3 ', -3],
    ['.5', 0.5],
    ['3.', 3],
    ['1e3', 1000],
  ])('%s is read', (text, value) => {
    expect(typedNumber(text)).toBe(value)
  })

  test.each(['', 'a', '1,234,5', '1e999', '3 V', '--2', '0x10', 'NaN'])('%s is none', (text) => {
    expect(typedNumber(text)).toBeNull()
  })

  test('a list has blanks or semicolons between its numbers, and is refused whole where one of them is none', () => {
    expect(typedList('8.2  8,3;8.25')).toEqual([8.2, 8.3, 8.25])
    expect(typedList('')).toEqual([])
    expect(typedList('8.2 kg')).toBeNull()
  })

  test('a pasted table is cut at tabs, else semicolons, else blanks; empty lines are left out, empty cells stay', () => {
    expect(pastedTable('3.9\t560\r\n\r\n7.8\t1150\n')).toEqual([
      ['3.9', '560'],
      ['7.8', '1150'],
    ])
    expect(pastedTable('1\t\t3')).toEqual([['1', '', '3']])
    expect(pastedTable('1;2')).toEqual([['1', '2']])
    expect(pastedTable(' 1  2 \n3 4')).toEqual([
      ['1', '2'],
      ['3', '4'],
    ])
  })
})
