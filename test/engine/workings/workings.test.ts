import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { completeBuild, readBuild } from '../../../shared-engine/build/read.ts'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { anyBuild } from '../../fixtures/build/any.ts'
import { plausibleBuild } from '../../fixtures/build/random.ts'
import { wrongIn } from './wrong.ts'

// Every working of every build is worked out again by mathjs, which knows nothing of this program: what a person reads
// is what the engine did. Golden builds and demo builds are invented; what the engine computes is held elsewhere to
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

const builds = [...buildsIn('test/golden/'), ...buildsIn('examples/')]

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
