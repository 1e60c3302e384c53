import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { catalogue, sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { MistakeCode } from '../../../shared-engine/mistakes/catalogue.ts'
import { oneLine, shown } from '../../../shared-engine/mistakes/shown.ts'

const codes = Object.keys(catalogue) as MistakeCode[]
const blank = { path: '', value: '', allowed: '', kept: '' }

describe.each(codes)('%s', (code) => {
  test('is one plain line that ends in a full stop, with or without details', () => {
    const full = { code, path: 'pack.series', value: '99', allowed: '1 to 60', kept: '12' }
    for (const mistake of [full, { ...blank, code }]) {
      const sentence = sentenceOf(mistake)
      expect(sentence).toMatch(/^[^\n\r]+\.$/)
      expect(sentence).not.toMatch(/undefined|null|\.\.|; allowed: \.|Kept: \./)
    }
  })

  test('stays one short line whatever bytes a file put into it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 3000 }), (text) => {
        const sentence = sentenceOf({ code, path: text, value: text, allowed: text, kept: text })
        expect(sentence).not.toMatch(/[\p{Cc}\p{Zl}\p{Zp}]/u)
        expect([...sentence].length).toBeLessThan(1100)
      }),
      { numRuns: 20 },
    )
  })
})

test('whole sentences', () => {
  expect(
    sentenceOf({
      code: 'out-of-range',
      path: 'pack.series',
      value: '99',
      allowed: '1 to 60 cells',
      kept: '12 cells',
    }),
  ).toBe('pack.series is 99, out of range; allowed: 1 to 60 cells. Kept: 12 cells.')
  expect(
    sentenceOf({ ...blank, code: 'missing', path: 'motor.kvRpmPerVolt', allowed: '10 to 20000 rpm/V' }),
  ).toBe('motor.kvRpmPerVolt is missing; allowed: 10 to 20000 rpm/V.')
  expect(sentenceOf({ ...blank, code: 'not-json', value: 'line 3: a comma is missing' })).toBe(
    'the file is not JSON: line 3: a comma is missing.',
  )
  expect(sentenceOf({ ...blank, code: 'no-such-file', value: 'hut.build.json' })).toBe(
    'there is no file hut.build.json.',
  )
})

test('an escape sequence in a key cannot drive a terminal', () => {
  expect(oneLine('a\u001b[31mb\nc', 20)).toBe('a\uFFFD[31mb\uFFFDc')
  expect(oneLine('right\u202Eto left', 20)).not.toContain('\u202E')
})

test('long text is cut with an ellipsis, never inside a character', () => {
  expect(oneLine('🚜'.repeat(50), 10)).toBe(`${'🚜'.repeat(9)}…`)
})

test.each([
  ['text', '"text"'],
  [5, '5'],
  [null, 'null'],
  [true, 'true'],
  [[], 'an empty list'],
  [[1, 2], 'a list of 2'],
  [{}, 'a group of entries'],
  [undefined, 'nothing'],
])('%j is shown as %s', (value, text) => {
  expect(shown(value)).toBe(text)
})
