import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { entryOfConvention } from '../../../shared-engine/entries/conventions.ts'
import {
  entryAt,
  entryInForce,
  withEntry,
  withItem,
  withItemMoved,
  withoutItem,
} from '../../../shared-engine/entries/edit.ts'
import { fieldOf, fieldPatterns } from '../../../shared-engine/entries/fields.ts'
import { keysOf, patternOf } from '../../../shared-engine/entries/path.ts'
import { readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import { writeBuild } from '../../../shared-engine/entries/write.ts'
import { plausibleBuild } from '../../fixtures/build/random.ts'
import { fullBuild, plainBuild } from '../../fixtures/build/plain.ts'

describe('paths', () => {
  it('have one key for each level; a path within tolerances or origins is one key', () => {
    expect(keysOf('stages.0.ratio')).toEqual(['stages', '0', 'ratio'])
    expect(keysOf('tolerances.stages.0.ratio')).toEqual(['tolerances', 'stages.0.ratio'])
    expect(keysOf('tolerances.stages.0.ratio.plusMinus')).toEqual([
      'tolerances',
      'stages.0.ratio',
      'plusMinus',
    ])
    expect(keysOf('origins.pack.series')).toEqual(['origins', 'pack.series'])
    expect(patternOf('tolerances.stages.0.ratio.shape')).toBe('tolerances.*.shape')
    expect(patternOf('accessories.12.watts')).toBe('accessories.*.watts')
  })
})

describe('one entry', () => {
  it('is found as entered, or as the default that is in force', () => {
    expect(entryAt(fullBuild(), 'stages.2.size')).toBe('08B')
    expect(entryAt(plainBuild(), 'service.factor')).toBeUndefined()
    expect(entryInForce(plainBuild(), 'service.factor')).toBe(1.5)
    expect(entryAt(plainBuild(), 'pack.constructor')).toBeUndefined()
    expect(entryAt(plainBuild(), 'stages.0.kind')).toBeUndefined()
  })

  it('is changed without touching the old build', () => {
    const before = fullBuild()
    const after = withEntry(before, 'stages.1.widthMm', 30)
    expect(before).toEqual(fullBuild())
    expect(entryAt(after, 'stages.1.widthMm')).toBe(30)
    expect(withEntry(after, 'stages.1.widthMm', 25)).toEqual(before)
    expect(after.track).toBe(before.track)
  })

  it('makes the group it stands in, and takes it away with its last entry', () => {
    const some = withEntry(plainBuild(), 'controller.burstAmps', 90)
    expect(some.controller).toEqual({ burstAmps: 90 })
    expect(withEntry(some, 'controller.burstAmps', undefined)).toEqual(plainBuild())
    expect(withEntry({ ...plainBuild(), controller: {} }, 'pack.series', 5).controller).toEqual({})
  })

  it('takes its tolerance and its origin with it', () => {
    const after = withEntry(fullBuild(), 'stages.1.widthMm', undefined)
    expect(Object.keys(after.tolerances ?? {})).toEqual(['motor.kvRpmPerVolt'])
    const without = withEntry(withEntry(fullBuild(), 'vehicle.massKg', undefined), 'stages', undefined)
    expect(without.origins).toEqual({ 'pack.chemistry': 'stated' })
  })

  it('taken out and put back gives the same text, wherever a build has a number', () => {
    fc.assert(
      fc.property(plausibleBuild, fc.nat(), (build, pick) => {
        const paths = Object.entries(build.motor).map(([key]) => `motor.${key}`)
        const path = paths[pick % paths.length] ?? 'motor.kvRpmPerVolt'
        const back = withEntry(withEntry(build, path, undefined), path, entryAt(build, path))
        expect(writeBuild(back)).toBe(writeBuild(build))
      }),
    )
  })
})

describe('lists', () => {
  const spoken = (build: ReturnType<typeof fullBuild>) => [
    ...Object.keys(build.tolerances ?? {}),
    ...Object.keys(build.origins ?? {}),
  ]
  const kinds = (build: ReturnType<typeof fullBuild>) => build.stages?.map((stage) => stage.kind)

  it('a new item moves what is said of later ones', () => {
    const build = withItem(fullBuild(), 'stages', { kind: 'fixed', ratio: 2 }, 1)
    expect(kinds(build)).toEqual(['gear', 'fixed', 'belt', 'chain', 'fixed'])
    expect(spoken(build)).toEqual([
      'motor.kvRpmPerVolt',
      'stages.2.widthMm',
      'vehicle.massKg',
      'pack.chemistry',
      'stages.3.driverTeeth',
    ])
    expect(readStoredBuildValue(build).ok).toBe(true)
    expect(kinds(withItem(plainBuild(), 'stages', { kind: 'fixed', ratio: 2 }))).toEqual(['fixed'])
  })

  it('an item that goes takes along what is said of it', () => {
    const build = withoutItem(fullBuild(), 'stages', 1)
    expect(kinds(build)).toEqual(['gear', 'chain', 'fixed'])
    expect(spoken(build)).toEqual([
      'motor.kvRpmPerVolt',
      'vehicle.massKg',
      'pack.chemistry',
      'stages.1.driverTeeth',
    ])
    expect(readStoredBuildValue(build).ok).toBe(true)
  })

  it('an item that moves keeps what is said of it', () => {
    const build = withItemMoved(fullBuild(), 'stages', 2, 0)
    expect(kinds(build)).toEqual(['chain', 'gear', 'belt', 'fixed'])
    expect(spoken(build)).toContain('stages.0.driverTeeth')
    expect(spoken(build)).toContain('stages.2.widthMm')
    expect(withItemMoved(build, 'stages', 0, 2)).toEqual(fullBuild())
    expect(withItemMoved(build, 'stages', 9, 0)).toBe(build)
  })
})

describe('conventions', () => {
  const build = fullBuild()

  it.each([
    ['a resistance of one phase', 30, 2, 60],
    ['a ratio the other way round', 0.25, 'inverse', 4],
    ['rpm of the shaft of a motor with 14 pole pairs', 5000, 'polePairs', 70_000],
    ['electrical rpm of it', 70_000, 'perPolePair', 5000],
    ['the capacity of one of four cells side by side', 5000, 'parallel', 20_000],
    ['the mass of both loops', 3600, 'perLoop', 1800],
    ['pack amps, which no factor turns into motor amps', 40, null, null],
    ['no ratio at all', 0, 'inverse', null],
  ] as const)('%s', (_name, value, factor, entry) => {
    expect(entryOfConvention(value, factor, build)).toBe(entry)
  })

  it('of every entry that asks lead to a number, or say why none does', () => {
    const conventions = fieldPatterns.flatMap((pattern) => fieldOf(pattern)?.asks?.conventions ?? [])
    expect(conventions.length).toBeGreaterThan(20)
    for (const { factor, note } of conventions) {
      const entry = entryOfConvention(7, factor, build)
      if (entry === null) expect(note).toMatch(/\.$/)
      else expect(entry).toBeGreaterThan(0)
    }
  })

  it('say nothing where the build lacks the number of poles', () => {
    expect(entryOfConvention(5000, 'polePairs', withEntry(build, 'motor.poleCount', undefined))).toBeNull()
  })
})
