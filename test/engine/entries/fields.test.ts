import { describe, expect, it } from 'vitest'
import { entryReaderOf, standardOf } from '../../../shared-engine/entries/entry-reader.ts'
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

/** One joint of each kind, as the least that it may hold. */
const joints: Readonly<Record<string, object>> = {
  key: { kind: 'key', lengthMm: 14 },
  screw: { kind: 'screw', screwMm: 4 },
  pin: { kind: 'pin', pinMm: 3 },
  clamp: { kind: 'clamp', clampForceN: 6000 },
  flat: { kind: 'flat', lengthMm: 30, flatDepthMm: 1 },
}

/** A demo build that has the entry or may have it: the ground, and the kind of joint, that it goes with. */
function bySubject(pattern: string): StoredBuild {
  if (pattern.startsWith('ground.soil')) return soilBuild()
  const at = /^(.*\.?joint)\./.exec(pattern)?.[1]?.replace('stages.*', 'stages.0')
  const kind = fieldOf(pattern)?.onlyWith?.among[0]
  if (at === undefined || kind === undefined || !(kind in joints)) return fullBuild()
  const more = at === 'motor.joint' ? { shaftDiameterMm: 10 } : {}
  return withEntry(fullBuild(), at, { ...joints[kind], ...more })
}

/** Entries that are optional in the table and that a rule asks for in the demo builds. */
const heldByRules: readonly string[] = [
  'stages.*.centreMm',
  'stages.*.allowableTensionN',
  'stages.*.shaftDiameterMm',
  'stages.*.shaftMaterial',
  'wires.*.stepDown',
  'wires.*.areaMm2',
  'wires.*.awg',
  'service.pattern.rows.*.speedKmh',
]

/** Where an entry of the pattern stands in the demo builds: the kinds of reduction are their first four stages. */
function placeOf(pattern: string): string {
  const first = (list: string) =>
    pattern.startsWith('accessories.*.stepDown') && list === 'accessories' ? 1 : 0
  const place = pattern.replace(
    /^(accessories|stepDowns|wires|service\.pattern\.rows)\.\*/,
    (_, list: string) =>
      `${list}.${pattern === 'wires.*.stepDown' || pattern === 'wires.*.awg' ? 1 : first(list)}`,
  )
  const { entry, among } = fieldOf(pattern)?.onlyWith ?? {}
  const kind = (entry === 'stages.*.kind' ? among?.[0] : undefined) ?? 'gear'
  return place.replace('stages.*', `stages.${['gear', 'belt', 'chain', 'fixed'].indexOf(kind)}`)
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
      return (
        fieldOf(pattern)?.kind !== 'text' &&
        fieldOf(pattern)?.flag === undefined &&
        !evidence.includes(pattern)
      )
    })
    expect([...numbers].sort()).toEqual(contractNumbers.map(([path]) => path).sort())
  })

  it.each(contractNumbers)('%s: need %s, from %d to %d', (path, need, low, high) => {
    const field = fieldOf(path)
    expect(field).toMatchObject({ low, high })
    expect(field?.default).toBe(typeof need === 'number' ? need : undefined)
    expect(field?.defaultFrom !== undefined).toBe(need === '=')
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
      if (heldByRules.includes(pattern)) return // Told by the rules' tests.
      if (!read.ok) throw new Error(read.mistakes.map(sentenceOf).join('\n'))
      const inForce = path
        .split('.')
        .reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], completeBuild(read.value))
      expect(inForce).toBe(standardOf(field, entryReaderOf(read.value), path))
    },
  )

  it('a flag is true or false', () => {
    expect(mistakesWith('ground.soil.snow', true)).toEqual([])
    for (const other of ['yes', 1, 0, null, {}])
      expect(mistakesWith('ground.soil.snow', other)).toMatchObject([
        { code: 'not-one-of', allowed: 'true or false' },
      ])
  })

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
