import { expect, test } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { tellingEntries } from '../../../shared-engine/uncertainty/telling.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'

function buildOf(stored: StoredBuild): Build {
  const read = readStoredBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return completeBuild(read.value)
}

test('entries are ranked by how far a hundredth of each moves the margin; promises and counts are not asked', () => {
  // Demo data: a lamp of 40 W behind a converter for 5 A at 12 V. By hand: margin 1 − 40/(5 · 12); one percent more watts
  // take 0.01 · 40/60 of it, one percent more volts give 40/60 − 40/60.6; the 5 A are a promise of the label.
  const lamp = { name: 'lamp', watts: 40, volts: 12, converterAmps: 5 }
  const found = tellingEntries(
    check(buildOf({ ...simpleBuild(), accessories: [lamp] })),
    'converter.1.current',
  )
  expect(found.map(({ path }) => path)).toEqual(['accessories.0.watts', 'accessories.0.volts'])
  expect(found[0]?.reach).toBeCloseTo((0.01 * 40) / 60, 9)
  expect(found[1]?.reach).toBeCloseTo(40 / 60 - 40 / 60.6, 9)
})

test('a limit that cannot be formed has none', () => {
  expect(tellingEntries(check(buildOf(simpleBuild())), 'converter.1.current')).toEqual([])
})
