import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chanceText } from '../../shared-engine/units/chance.ts'
import { bandWords } from '../../shared-engine/limits/margin-words.ts'
import { oddIn } from '../fixtures/text/odd.ts'
import { isBand } from '../../src-renderer/limits/bar.ts'
import {
  correlationText,
  correlationWords,
  pointsText,
  probabilityWords,
} from '../../src-renderer/questions/hold/uncertainty-words.ts'

describe('a probability', () => {
  // At most two digits, as JCGM 100:2008 (GUM), 7.2.6, has it for what is uncertain.
  it.each([
    [0, '< 1 %', 'very unlikely'],
    [0.0099, '< 1 %', 'very unlikely'],
    [0.031, '3.1 %', 'unlikely'],
    [0.0994, '9.9 %', 'unlikely'],
    [0.0999, '10 %', 'unlikely'],
    [0.312, '31 %', 'quite possible'],
    [0.5, '50 %', 'about as likely as not'],
    [0.75, '75 %', 'likely'],
    [0.985, '99 %', 'very likely'],
    [1, '> 99 %', 'practically certain'],
  ])('%d is %s, %s', (probability, text, words) => {
    expect(chanceText(probability).replace(/\u202F/g, ' ')).toBe(text)
    expect(probabilityWords(probability)).toBe(words)
  })
})

describe('a band of margins', () => {
  it.each([
    [-0.273, -0.212, '27 to 21 % over'],
    [0.44, 0.47, '44 to 47 % in hand'],
    [-0.14, 0.24, '14 % over to 24 % in hand'],
    [null, 0.24, 'exceeded to 24 % in hand'],
    [-6.9, -5.1, '7.9 to 6.1 times'],
    [-6.9, -0.14, '7.9 times what it bears to 14 % over'],
  ])('from %d to %d is %s', (margin5, margin95, words) => {
    expect(bandWords({ margin5, margin95 }).replace(/\u202F/g, ' ')).toBe(words)
  })

  it('has two ends, or is told as one number', () => {
    const margin = fc.double({ min: -30, max: 1, noNaN: true })
    fc.assert(
      fc.property(margin, fc.double({ min: 0, max: 0.1, noNaN: true }), (margin5, width) => {
        for (const sense of ['maximum', 'minimum', 'temperature'] as const)
          expect(oddIn(bandWords({ margin5, margin95: margin5 + width }, sense))).toEqual([])
      }),
    )
    expect(bandWords({ margin5: -1.706, margin95: -1.706 })).toBe('171\u202F% over')
    expect(bandWords({ margin5: -6.93, margin95: -6.92 })).toBe('7.9 times')
  })

  it('is worth a line from half a percent on', () => {
    expect(isBand({ margin5: 0.1, margin95: 0.104 })).toBe(false)
    expect(isBand({ margin5: 0.1, margin95: 0.106 })).toBe(true)
    expect(isBand({ margin5: null, margin95: 0.1 })).toBe(true)
    expect(isBand({ margin5: null, margin95: null })).toBe(false)
  })
})

describe('a rank correlation', () => {
  it('has its sign in words and in its number', () => {
    expect([correlationText(-0.936), correlationWords(-0.936)]).toEqual(['−0.94', 'more of it, less in hand'])
    expect([correlationText(0.5), correlationWords(0.5)]).toEqual(['+0.50', 'more of it, more in hand'])
  })

  it('goes with a band in points of margin', () => {
    expect([pointsText(0.0605), pointsText(0.41)]).toEqual(['6.0 points', '41 points'])
  })
})
