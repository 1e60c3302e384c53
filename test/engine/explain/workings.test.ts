import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { completeBuild, readBuild } from '../../../shared-engine/entries/read.ts'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { anyBuild } from '../../fixtures/build/any.ts'
import { plausibleBuild } from '../../fixtures/build/random.ts'
import type { WorkingStep } from '../../../shared-engine/workings/working.ts'
import { workingOf } from '../../../shared-engine/explain/table.ts'
import { wrongIn, wrongWith } from './wrong.ts'

const idle = { symbol: 'x', name: 'nothing', value: 1, kind: 'none' } as const

// A working's numbers come of its own algebra, and its last one is the engine's. Every step of every working is worked
// out again by mathjs, which knows nothing of this program: the algebra ends in what the engine computed. Golden builds and demo builds are invented; what the engine computes is held elsewhere to
// standards and to independent implementations.

const root = new URL('../../../', import.meta.url)

function buildsIn(folder: string): (readonly [string, Checked])[] {
  const here = new URL(folder, root)
  const names = readdirSync(here).filter((name) => name.endsWith('.build.json'))
  return names.map((name) => {
    const read = readBuild(readFileSync(new URL(name, here)))
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    return [name, check(read.value)] as const
  })
}

const builds = [
  ...buildsIn('test/golden/'),
  ...buildsIn('test/golden/2/'),
  ...buildsIn('test/golden/2/heat/'),
  ...buildsIn('examples/'),
]

describe('every working, worked out again', () => {
  test.each(builds)('%s', (_name, checked) => {
    expect(wrongIn(checked)).toEqual([])
  })

  test('random builds of plausible sizes', () => {
    fc.assert(
      fc.property(plausibleBuild, (stored) => {
        expect(wrongIn(check(completeBuild(stored)))).toEqual([])
      }),
      { numRuns: 40 },
    )
  })

  test('builds anywhere in the ranges', () => {
    fc.assert(
      fc.property(anyBuild, (stored) => {
        expect(wrongIn(check(completeBuild(stored)))).toEqual([])
      }),
      { numRuns: 40 },
    )
  })
})

describe('the look at a working bites', () => {
  const [first] = builds
  if (first === undefined) throw new Error('no builds')
  const [, checked] = first
  const working = workingOf(checked, 'freeRpm')
  if (working === null) throw new Error('freeRpm has no working')
  const changed = (symbol: string, change: Partial<WorkingStep>) => ({
    ...working,
    steps: working.steps.map((step) => (step.symbol === symbol ? { ...step, ...change } : step)),
  })

  test.each([
    ['a wrong formula', changed('R_s', { expression: 'R_m - R_esc' }), /R_s = R_m - R_esc gives/],
    ['a symbol from nowhere', changed('R_s', { expression: 'R_m + R_other' }), /uses R_other, unknown/],
    ['another result', changed('n', { value: 1 }), /ends in 1, not in/],
    ['a root without words', changed('R_s', { expression: null }), /neither algebra nor words/],
    ['a symbol that nothing uses', { ...working, symbols: [...working.symbols, idle] }, /x is not used/],
    [
      'an entry that is none',
      { ...working, symbols: [{ ...idle, from: 'motor.colour' }] },
      /no entry motor.colour/,
    ],
    ['no source', { ...working, source: ' ' }, /no source/],
    ['a number that is none', { ...working, title: 'It is NaN.' }, /NaN/],
  ])('%s', (_name, wrong, told) => {
    expect(wrongWith(wrong, checked).join('\n')).toMatch(told)
  })

  test('and finds nothing in what stands', () => {
    expect(wrongWith(working, checked)).toEqual([])
  })
})

test('a name that this machine cannot have has no working', () => {
  for (const [, checked] of builds) {
    for (const name of [
      '',
      'constructor',
      '__proto__',
      'stage.7.shaft',
      'stage.1.colour',
      'converter.21.current',
    ])
      expect(workingOf(checked, name)).toBeNull()
  }
})

test('a limit whose entries are not given says which would bring it', () => {
  const stored = buildsIn('test/golden/').map(([, { build }]) => build)
  const without = stored.find(({ track }) => track.breakingTensionN === undefined)
  if (without === undefined) throw new Error('every golden build has a breaking tension')
  const working = workingOf(check(without), 'track.tension')
  expect(working?.missing).toBe(
    'it needs what is not entered: “Breaking tension of one loop” (track.breakingTensionN).',
  )
  expect(working?.steps).toEqual([])
})
