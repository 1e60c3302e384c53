import { describe, expect, it } from 'vitest'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import {
  allowedOf,
  type Field,
  fieldOf,
  fieldPatterns,
  groups,
  isRequired,
} from '../../../shared-engine/entries/fields.ts'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../../shared-engine/mistakes/mistake.ts'
import { fullBuild, plainBuild, soilBuild } from '../../fixtures/build/plain.ts'
import { contractCounts, contractNumbers, contractWords } from './contract.ts'

const bySubject = (pattern: string): StoredBuild =>
  pattern.startsWith('ground.soil') ? soilBuild() : fullBuild()

/** Where an entry of the pattern stands in the demo builds: the kinds of reduction are their first four stages. */
function placeOf(pattern: string): string {
  const place = pattern.replace('accessories.*', 'accessories.0')
  const kinds = fieldOf(pattern)?.onlyWith?.among ?? ['gear']
  return place.replace('stages.*', `stages.${['gear', 'belt', 'chain', 'fixed'].indexOf(kinds[0] ?? 'gear')}`)
}

function mistakesWith(pattern: string, value: unknown): readonly Mistake[] {
  const path = placeOf(pattern)
  const read = readStoredBuildValue(withEntry(bySubject(pattern), path, value))
  return read.ok ? [] : read.mistakes.filter((mistake) => mistake.path === path)
}

/** The next number away from zero or towards it: one unit in the last place past an end of a range. */
function past(end: number, direction: 1 | -1): number {
  return end === 0 ? direction * Number.MIN_VALUE : end + direction * Math.abs(end) * 2 ** -52
}

describe('table of entries', () => {
  it('has the contract’s numbers, all of them and no others', () => {
    const evidence = fieldPatterns.filter((pattern) => /^(tolerances|origins|version)/.test(pattern))
    const numbers = fieldPatterns.filter((pattern) => {
      return fieldOf(pattern)?.kind !== 'text' && !evidence.includes(pattern)
    })
    expect([...numbers].sort()).toEqual(contractNumbers.map(([path]) => path).sort())
  })

  it.each(contractNumbers)('%s: need %s, from %d to %d', (path, need, low, high) => {
    const field = fieldOf(path)
    expect(field).toMatchObject({ low, high })
    expect(field?.default).toBe(typeof need === 'number' ? need : undefined)
    expect(field?.optional ?? false).toBe(need === '?')
    expect(field?.whole ?? false).toBe(contractCounts.includes(path))
  })

  it.each(contractWords)('%s: need %s, one of %s', (path, need, words) => {
    const field = fieldOf(path)
    expect(field?.choices?.map((choice) => choice.value)).toEqual(words)
    expect(field?.default).toBe(need === '*' ? undefined : need)
  })

  it.each(fieldPatterns)('%s is told in plain words', (pattern) => {
    const field = fieldOf(pattern) as Field
    expect(field.label.length).toBeGreaterThan(0)
    expect(field.help).toMatch(/^[A-Z0-9].*[.!]$/)
    expect(field.help.length).toBeLessThanOrEqual(160)
    // An optional entry says what it would bring; what has a default of its own, or half the height, brings nothing.
    const free = ['track.tooth.loadHeightMm', 'tolerances.*.plusMinusPercent', 'tolerances.*.plusMinus']
    if (field.optional === true && !free.includes(pattern)) expect(field.brings).toMatch(/\.$/)
  })

  it('asks only with the stored convention first', () => {
    const asked = fieldPatterns.filter((pattern) => fieldOf(pattern)?.asks !== undefined)
    expect(asked).toContain('motor.resistanceMilliohm')
    expect(asked).toContain('motor.poleCount')
    for (const pattern of asked) {
      const { asks } = fieldOf(pattern) as Field
      expect(asks?.question).toMatch(/\?$/)
      expect(asks?.conventions[0].factor).toBe(1)
      for (const { factor, note } of asks?.conventions ?? []) if (factor === null) expect(note).toBeDefined()
    }
  })
})

describe('schema and table agree', () => {
  it.each(contractNumbers)(
    '%s (%s): both ends pass, past them and other things do not',
    (path, _need, low, high) => {
      for (const end of [low, high])
        expect(mistakesWith(path, end).map((mistake) => mistake.code)).not.toContain('out-of-range')
      const allowed = allowedOf(fieldOf(path) as Field)
      for (const outside of [
        past(low, -1),
        past(high, 1),
        low - 1,
        high + 1,
        1e308,
        -1e308,
        Infinity,
        -Infinity,
      ]) {
        expect(mistakesWith(path, outside)).toMatchObject([
          { code: 'out-of-range', path: placeOf(path), allowed },
        ])
      }
      for (const other of ['1', '', true, null, [], {}, NaN]) {
        expect(mistakesWith(path, other)).toMatchObject([
          { code: 'not-a-number', path: placeOf(path), allowed },
        ])
      }
    },
  )

  it.each(contractCounts)('%s is whole', (path) => {
    const { low = 0 } = fieldOf(path) ?? {}
    expect(mistakesWith(path, low + 0.5)).toMatchObject([{ code: 'out-of-range' }])
  })

  it.each(fieldPatterns.filter((pattern) => !/^(format|version|tolerances|origins|readings)/.test(pattern)))(
    '%s is %#: required, optional or with a default as the table says',
    (pattern) => {
      const path = placeOf(pattern)
      const field = fieldOf(pattern) as Field
      const read = readStoredBuildValue(withEntry(bySubject(pattern), path, undefined))
      if (isRequired(field)) {
        expect(read.ok ? [] : read.mistakes).toContainEqual(
          expect.objectContaining({ code: 'missing', path }),
        )
        return
      }
      if (pattern === 'stages.*.centreMm' || pattern === 'stages.*.allowableTensionN') return // Told by the rules' tests.
      if (!read.ok) throw new Error(read.mistakes.map(sentenceOf).join('\n'))
      const inForce = path
        .split('.')
        .reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], completeBuild(read.value))
      expect(inForce).toBe(field.default)
    },
  )

  it('lists are as long as the groups say', () => {
    const read = readStoredBuildValue({
      ...plainBuild(),
      stages: Array(7).fill({ kind: 'fixed', ratio: 1 }),
      accessories: Array(21).fill({ name: '', watts: 0 }),
    })
    expect(read.ok ? [] : read.mistakes).toMatchObject([
      { code: 'too-many', path: 'stages', allowed: `at most ${groups['stages']?.most}` },
      { code: 'too-many', path: 'accessories', allowed: `at most ${groups['accessories']?.most}` },
    ])
    expect(
      readStoredBuildValue({
        ...plainBuild(),
        stages: Array(6).fill({ kind: 'fixed', ratio: 1 }),
        accessories: Array(20).fill({ name: '', watts: 0 }),
      }).ok,
    ).toBe(true)
  })

  it('counts characters as a reader does', () => {
    expect(mistakesWith('name', '🛞'.repeat(120))).toEqual([])
    expect(mistakesWith('name', '🛞'.repeat(121))).toMatchObject([{ code: 'too-long' }])
    expect(mistakesWith('notes', 'n'.repeat(10_000))).toEqual([])
    expect(mistakesWith('notes', 'n'.repeat(10_001))).toMatchObject([{ code: 'too-long' }])
    expect(mistakesWith('name', 5)).toMatchObject([{ code: 'not-text' }])
  })
})
