import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { entryAt, type StoredBuild } from '../../shared-engine/index.ts'
import { fieldOf, fieldPatterns, type Field } from '../../shared-engine/entries/fields.ts'
import {
  entryText,
  entryWhole,
  fieldUnit,
  rangeText,
  readTyped,
  stepped,
  unusualText,
} from '../../src-renderer/fields/entry-text.ts'

function assertField(path: string): Field {
  const field = fieldOf(path)
  if (field === undefined) throw new Error(`no field ${path}`)
  return field
}

const numbers = fieldPatterns.filter((pattern) => {
  const field = fieldOf(pattern)
  return field?.low !== undefined && field.high !== undefined && !/^(version|tolerances)/.test(pattern)
})

describe('what a field shows and reads', () => {
  it('shows a stored number so that typing it again changes nothing, in metric to the last digit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...numbers),
        fc.integer({ min: 0, max: 1e6 }).map((part) => part / 1e6),
        (path, share) => {
          const field = assertField(path)
          const { low = 0, high = 1 } = field
          const raw = Number((low + share * (high - low)).toPrecision(12))
          const value = field.whole === true ? Math.round(raw) : Math.min(high, Math.max(low, raw))
          const read = readTyped(entryWhole(value, field, 'metric', undefined), path, field, 'metric')
          expect(read).toMatchObject({ tolerance: null })
          // 1e-14: through the engine's unit and back, one rounding each way.
          if (typeof read !== 'string')
            expect(Math.abs(read.value - value)).toBeLessThanOrEqual(1e-14 * Math.abs(value))
        },
      ),
    )
  })

  it('shows six digits at most while it is only looked at', () => {
    const mass = assertField('vehicle.massKg')
    expect(entryText(788.046371816935, mass, 'metric', undefined)).toBe('788.046')
    expect(entryText(13.5, mass, 'imperial', undefined)).toBe('29.7624')
    expect(entryWhole(788.046371816935, mass, 'metric', undefined)).toBe('788.046371816935')
  })

  it('takes any unit of the kind, fractions and sums', () => {
    const pitch = assertField('track.pitchMm')
    const take = (typed: string) => readTyped(typed, 'track.pitchMm', pitch, 'metric')
    expect(take('1 in')).toEqual({ value: 25.4, tolerance: null })
    expect(take('3/8 in')).toEqual({ value: 9.525, tolerance: null })
    expect(take('12+4')).toEqual({ value: 16, tolerance: null })
  })

  it('takes a bare number in the unit that it shows', () => {
    const pitch = assertField('track.pitchMm')
    expect(readTyped('1', 'track.pitchMm', pitch, 'imperial')).toEqual({ value: 25.4, tolerance: null })
  })

  it('keeps the module of a gear in mm, and takes inches where they are typed', () => {
    const path = 'stages.0.moduleMm'
    const gearModule = assertField(path)
    expect(fieldUnit(gearModule, 'imperial')).toBe('mm')
    expect(entryText(1.5, gearModule, 'imperial', { plusMinus: 0.01, shape: 'uniform' })).toBe('1.5 ± 0.01')
    expect(readTyped('1.5', path, gearModule, 'imperial')).toEqual({ value: 1.5, tolerance: null })
    expect(readTyped('0.05 in', path, gearModule, 'imperial')).toEqual({ value: 1.27, tolerance: null })
    expect(rangeText(gearModule, 'imperial')).toBe('0.1 to 50 mm')
  })

  it('shows a tolerance as it would be typed', () => {
    const pitch = assertField('track.pitchMm')
    for (const typed of ['16 ± 5 %', '16 ± 0.2']) {
      const read = readTyped(typed, 'track.pitchMm', pitch, 'metric')
      if (typeof read === 'string') throw new Error(read)
      expect(entryText(read.value, pitch, 'metric', read.tolerance ?? undefined)).toBe(typed)
    }
  })

  it('says what is allowed, in the unit that it shows', () => {
    const series = assertField('pack.series')
    expect(readTyped('99', 'pack.series', series, 'metric')).toBe('Allowed: a whole number, 1 to 60 cells.')
    const pitch = assertField('track.pitchMm')
    expect(readTyped('0.01', 'track.pitchMm', pitch, 'imperial')).toBe('Allowed: 0.03937 to 19.69 in.')
    expect(readTyped('abc', 'pack.series', series, 'metric')).toMatch(
      /^“abc” is not understood; allowed: a number/,
    )
  })

  it('hints at a share of one where percent are asked for', () => {
    const efficiency = assertField('stages.0.efficiencyPercent')
    const told = readTyped('0.97', 'stages.0.efficiencyPercent', efficiency, 'metric')
    expect(told).toBe('Allowed: 1 to 100 %. 0.97 of the whole is 97 %.')
    expect(readTyped('170', 'stages.0.efficiencyPercent', efficiency, 'metric')).toBe('Allowed: 1 to 100 %.')
  })

  it('takes what is unusual and says so, in the unit that it shows; what is allowed holds the usual', () => {
    const kv = assertField('motor.kvRpmPerVolt')
    expect(unusualText(15_000, kv, 'metric')).toMatch(/^Unusual: mostly 30 to 8000 rpm\/V\./)
    expect(unusualText(700, kv, 'metric')).toBe('')
    const mass = assertField('vehicle.massKg')
    expect(unusualText(900, mass, 'imperial')).toMatch(/^Unusual: mostly 1.1 to 1320 lb\./)
    const isUsual = (path: string, value: number) => unusualText(value, assertField(path), 'metric') === ''
    const usualPaths = fieldPatterns.filter((path) => fieldOf(path)?.usual !== undefined)
    expect(usualPaths).toHaveLength(11)
    for (const path of usualPaths) {
      const { low = -Infinity, high = Infinity } = assertField(path)
      expect(isUsual(path, low) && isUsual(path, high), path).toBe(false)
    }
    for (const name of readdirSync('examples').filter((file) => file.endsWith('.build.json'))) {
      const build = JSON.parse(readFileSync(`examples/${name}`, 'utf8')) as object
      for (const path of usualPaths) {
        const value = entryAt(build as StoredBuild, path)
        if (typeof value === 'number') expect(isUsual(path, value), `${path} of ${name}`).toBe(true)
      }
    }
  })

  it('steps by the second figure, stays in range and leaves no rounding dust', () => {
    expect(stepped(25.4, 1, assertField('track.pitchMm'))).toBe(26)
    expect(stepped(0.06, 1, assertField('ground.rollingCoefficient'))).toBe(0.061)
    expect(stepped(60, 1, assertField('pack.series'))).toBe(60)
    expect(stepped(14, 1, assertField('motor.poleCount'))).toBe(16)
    fc.assert(
      fc.property(
        fc.constantFrom(...numbers),
        fc.integer({ min: 0, max: 1e6 }).map((part) => part / 1e6),
        fc.integer({ min: -10, max: 10 }),
        (path, share, steps) => {
          const field = assertField(path)
          const { low = 0, high = 1 } = field
          const value = stepped(low + share * (high - low), steps, field)
          expect(value).toBeGreaterThanOrEqual(low)
          expect(value).toBeLessThanOrEqual(high)
          expect(String(value).length).toBeLessThanOrEqual(14)
        },
      ),
    )
  })
})

describe('what people write beside a number', () => {
  const read = (path: string, typed: string) => readTyped(typed, path, assertField(path), 'metric')

  it('the word for what is counted, in one or many', () => {
    expect(read('track.sprocketTeeth', '13 teeth')).toMatchObject({ value: 13 })
    expect(read('stages.0.driverTeeth', '1 tooth')).toContain('Allowed')
    expect(read('pack.series', '5 cells')).toMatchObject({ value: 5 })
    expect(read('pack.series', '5 teeth')).toContain('“teeth”')
  })

  it('a comma that one way of reading rules out is read the other way, and asked about where both may be', () => {
    expect(read('motor.ratedMaxRpm', '40,000')).toMatchObject({ value: 40_000 })
    expect(read('motor.kvRpmPerVolt', '2,650')).toMatchObject({ value: 2650 })
    expect(read('vehicle.massKg', '6,200')).toMatch(/6[.,]?200/)
    expect(read('vehicle.massKg', '6,2')).toMatchObject({ value: 6.2 })
  })
})
