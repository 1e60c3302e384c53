import { expect, test } from 'vitest'
import { tableTabs } from '../../shared-engine/draw/table.ts'
import { marginWords } from '../../src-renderer/limits/bar.ts'
import { inWords } from '../../src-renderer/limits/notes.ts'

test('a value below its least is short of it, and where nothing is allowed no number is made up', () => {
  expect(marginWords(-0.19, 'minimum')).toBe('19\u202F% short')
  expect(marginWords(-0.19)).toBe('19\u202F% over')
  expect(marginWords(0.19, 'minimum')).toBe('19\u202F% in hand')
  expect(marginWords(null)).toBe('exceeded')
})

test('two entries of one name are told apart by their parts', () => {
  const words = inWords('it needs motor.continuousAmps or controller.continuousAmps')
  expect(words).toContain('(Motor)')
  expect(words).toContain('(Controller)')
})

test('what is copied has a tab between cells and as many cells in every line, whatever a cell holds', () => {
  const columns = [
    { label: 'Name', unit: '' },
    { label: 'Speed', unit: 'km/h' },
  ]
  const text = tableTabs({
    columns,
    rows: [
      ['one\ttwo\nthree', 1.5],
      ['', null],
    ],
  })
  expect(
    text
      .split('\n')
      .slice(0, -1)
      .map((line) => line.split('\t').length),
  ).toEqual([2, 2, 2])
  expect(text.startsWith('Name\tSpeed (km/h)\n')).toBe(true)
})
