import fc from 'fast-check'
import { expect, test } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { tableTabs } from '../../shared-engine/draw/table.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { marginText, marginWords } from '../../shared-engine/limits/margin-words.ts'
import { inWords } from '../../src-renderer/limits/notes.ts'
import { groupSentence } from '../../src-renderer/questions/hold/group-words.ts'
import { weakestWords } from '../../src-renderer/questions/hold/weakest-words.ts'
import { limitOf } from '../../shared-engine/index.ts'
import { worstRow } from '../../shared-engine/limits/worst.ts'
import { anyBuild } from '../fixtures/build/any.ts'
import { lightSnowBuild } from '../fixtures/build/light-snow.ts'

test('a value below its least is short of it, and where nothing is allowed no number is made up', () => {
  expect(marginWords(-0.19, 'minimum')).toBe('19\u202F% short')
  expect(marginWords(-0.19)).toBe('19\u202F% over')
  expect(marginWords(0.19, 'minimum')).toBe('19\u202F% in hand')
  expect(marginWords(null)).toBe('exceeded')
})

test('further than 200 % over, a limit is as many times what it bears', () => {
  // Margin 1 − actual/allowed: 3,760 of 476 N is −6.9, 7.9 times; a least value of 8 with 1 is 1 − 8/1.
  expect(marginWords(1 - 3760 / 476)).toBe('7.9 times what it bears')
  expect(marginWords(1 - 3760 / 476, 'maximum', 'beside')).toBe('7.9 times that')
  expect(marginWords(1 - 8 / 1, 'minimum')).toBe('8.0 times too little')
  expect(marginWords(-2)).toBe('200\u202F% over')
  expect(marginWords(-23.4, 'temperature')).toBe('24 times the rise it bears')
  expect(marginText(1 - 3760 / 476)).toBe('7.9 times')
  expect(marginText(-0.084)).toBe('−8.4 %')
  expect(marginText(-1e6)).toBe('> 1,000 times')
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

test('what breaks in ordinary use is told by what a builder sees, on a machine where much goes wrong', () => {
  const { limits } = check(completeBuild(lightSnowBuild()))
  const said = groupSentence(
    'holds',
    limits.filter(({ group }) => group === 'holds'),
  )
  expect(said).toMatch(/^Loop leaving its wheels at top speed first: /)
  // What assumed numbers decide is counted apart.
  const holds = limits.filter(({ group }) => group === 'holds')
  const over = holds.filter(({ standing }) => standing === 'over')
  const soft = (count: number) =>
    groupSentence('holds', holds, new Map(over.slice(0, count).map(({ id }) => [id, []])))
  expect(over.length).toBeGreaterThan(1)
  expect(soft(0)).toBe(said)
  expect(soft(1)).toContain(`are over, 1 of them by assumed numbers`)
  expect(soft(over.length)).toContain('are over, by assumed numbers')
  expect(said).toContain('the slack side leaves its wheels: the track can be thrown.')
  expect(said).toContain('the front comes up before the tracks spin: the machine can go over backwards.')
})

test('what is said of the worst mechanical check claims nothing of the other limits, one of which may stand worse', () => {
  let beaten = 0
  fc.assert(
    fc.property(anyBuild, (stored) => {
      const { limits } = check(completeBuild(stored))
      const mechanical = worstRow(limits.filter(({ id }) => limitOf(id)?.question === 'hold'))
      if (mechanical === undefined) return
      const words = weakestWords(mechanical.margin)
      expect(words.includes('it holds')).toBe(mechanical.standing !== 'over')
      if (worstRow(limits)?.id === mechanical.id) return
      beaten += 1
      for (const said of [words, weakestWords(0.87), weakestWords(null)])
        expect(said).toMatch(/mechanical checks/)
    }),
    { numRuns: 60 },
  )
  expect(beaten).toBeGreaterThan(3)
})
