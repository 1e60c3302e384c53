import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isAssumed, withAssumptions } from '../../shared-engine/assume/assumed.ts'
import { newBuild } from '../../shared-engine/assume/start.ts'
import { withEntry } from '../../shared-engine/entries/edit.ts'
import { completeBuild, readStoredBuildValue } from '../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { check } from '../../shared-engine/check.ts'
import { mostNamed } from '../../src-renderer/limits/most-named.ts'
import { assumedParts } from '../../src-renderer/path/assumed-parts.ts'
import { stateWords } from '../../src-renderer/questions/fast/state-words.ts'
import { leftOpen, withoutReduction, withReduction } from '../../src-renderer/start/start-edits.ts'
import { massOfTypedSize, typedReduction } from '../../src-renderer/start/typed.ts'

describe('a reduction as it is typed', () => {
  it.each([
    ['12/58', { driverTeeth: 12, drivenTeeth: 58 }],
    ['12:58', { driverTeeth: 12, drivenTeeth: 58 }],
    ['12 to 58', { driverTeeth: 12, drivenTeeth: 58 }],
    ['4.83', { ratio: 4.83 }],
    ['4,83:1', { ratio: 4.83 }],
    ['10:1', { ratio: 10 }],
  ])('%s', (typed, read) => expect(typedReduction(typed)).toEqual(read))

  it.each(['', 'twelve', '12/', '/58', '-4', '12 V'])('“%s” is none', (typed) => {
    expect(typedReduction(typed)).toBeNull()
  })

  it('takes the place of the one that stands in, then stands behind the others, and goes again', () => {
    const one = withReduction(newBuild(), 0, 'gear', { driverTeeth: 12, drivenTeeth: 58 })
    const two = withAssumptions(withReduction(one, 1, 'belt', { driverTeeth: 16, drivenTeeth: 36 }))
    expect(two.stages?.map(({ kind }) => kind)).toEqual(['gear', 'belt'])
    expect(readStoredBuildValue(two)).toMatchObject({ ok: true })
    expect(isAssumed(two, 'stages.0.driverTeeth')).toBe(false)
    expect(isAssumed(two, 'stages.0.moduleMm')).toBe(true)
    expect(isAssumed(two, 'stages.1.profile')).toBe(true)
    // 58/12 · 36/16 = 10.875, by hand.
    expect(check(completeBuild(two)).figures.ratio).toBeCloseTo(10.875, 9)
    const back = withoutReduction(withoutReduction(two, 1), 0)
    expect(back.stages).toEqual(newBuild().stages)
    expect(isAssumed(back, 'stages.0.ratio')).toBe(true)
  })

  it('is whole whatever teeth are typed', () => {
    const teeth = fc.integer({ min: 4, max: 400 })
    fc.assert(
      fc.property(
        fc.constantFrom('belt' as const, 'chain' as const, 'fixed' as const),
        teeth,
        teeth,
        (kind, a, b) => {
          const typed = withReduction(newBuild(), 0, kind, { driverTeeth: a, drivenTeeth: b })
          const stored = withAssumptions(typed)
          const read = readStoredBuildValue(stored)
          // What is refused is refused for teeth that were typed, never for a number that was assumed.
          if (!read.ok)
            for (const { path } of read.mistakes) expect(isAssumed(stored, path), path).toBe(false)
        },
      ),
    )
  })
})

describe('a size of a motor as it is typed', () => {
  it.each(['36 x 50', '36×50 mm', '36 by 50', '3.6 x 5 cm'])('%s', (typed) => {
    // Volume of a cylinder, 50.9 cm³, at 3.8 g/cm³.
    expect(massOfTypedSize(typed)).toBeCloseTo(0.1934, 4)
  })

  it.each(['190 g', '0.19', '', '36', 'x 50'])('“%s” is none', (typed) =>
    expect(massOfTypedSize(typed)).toBeNull(),
  )
})

it('an entry that is left open again is assumed again', () => {
  const typed = withEntry(newBuild(), 'origins.pack.series', undefined) as StoredBuild
  const open = leftOpen(withEntry(typed, 'pack.series', 7), 'pack.series')
  expect(open.pack.series).toBe(4)
  expect(isAssumed(open, 'pack.series')).toBe(true)
})

it('parts are drawn in full as soon as one of their numbers is entered', () => {
  const all = ['pack', 'controller', 'motor', 'track', 'vehicle', 'ground', 'stage.1']
  expect(assumedParts(newBuild())).toEqual(all)
  const typed = withEntry(newBuild(), 'origins.pack.series', undefined) as StoredBuild
  expect(assumedParts(typed)).toEqual(all.filter((part) => part !== 'pack'))
})

describe('what the answer holds for', () => {
  const words = (stored: StoredBuild) =>
    stateWords(check(completeBuild(stored)), (celsius) => `${celsius} °C`).map((state) => state.words)

  it('names warmth, charge, air, ground, and what of it is assumed', () => {
    expect(words(newBuild())).toEqual([
      'warm motor (60 °C)',
      'pack at 100\u202F%, 15 °C',
      'air drag by an assumed frontal area',
      'short grass, level, assumed',
    ])
  })

  it('says that air is left out, that the throttle is capped, that the motor is cold, and the slope', () => {
    const bare = withEntry(
      withEntry(newBuild(), 'vehicle.frontalAreaM2', undefined),
      'ground.gradePercent',
      10,
    )
    const cold = withEntry(
      withEntry(bare, 'service.windingTemperatureC', 5),
      'controller.throttleCapPercent',
      60,
    )
    expect(words(cold)).toEqual([
      'cold motor (5 °C)',
      'pack at 100\u202F%, 15 °C',
      'throttle at most 60\u202F%',
      'air drag not counted: no frontal area entered',
      'short grass, up 10\u202F%, assumed',
    ])
  })
})

it('entries are named once, the one that decides most of the limits first', () => {
  expect(mostNamed(['a', 'b', 'c', 'b'])).toEqual(['b', 'a', 'c'])
})
