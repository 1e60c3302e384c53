import fc from 'fast-check'
import { expect, it } from 'vitest'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
import { waitedFor } from '../../shared-engine/explain/waiting.ts'
import { limitsOf } from '../../shared-engine/limits/table.ts'
import { entryLabel, entryName } from '../../src-renderer/fields/entry-name.ts'
import { anyBuild } from '../fixtures/build/any.ts'
import { rawKeyIn } from '../fixtures/text/odd.ts'
import { demoBuild } from './states.ts'

it('whatever a limit waits for has a name, in every part and for every one of several', () => {
  let groups = 0
  fc.assert(
    fc.property(
      fc.oneof(
        anyBuild,
        fc.constantFrom('quick-sled-puller', 'hut-hauler', 'culvert-crawler').map(demoBuild),
      ),
      (stored) => {
        const checked = check(completeBuild(stored))
        const asked = [
          ...waitedFor(checked).map(({ path }) => path),
          ...checked.notJudged.flatMap(({ needs }) => needs),
          ...limitsOf(checked.machine).flatMap(({ needs }) => needs),
        ]
        for (const path of new Set(asked)) {
          expect(rawKeyIn(entryName(path))).toBeNull()
          expect(entryLabel(path), path).not.toBe(path)
          if (/\.(joint|bearing)$/.test(path)) groups += 1
        }
      },
    ),
    { numRuns: 60 },
  )
  expect(groups).toBeGreaterThan(20)
})

it('one of several is told from the others', () => {
  expect(entryName('stages.0.joint')).toBe('Wheel on its shaft (Reduction 1)')
  expect(entryName('wires.1.areaMm2')).toMatch(/ 2\)$/)
})
