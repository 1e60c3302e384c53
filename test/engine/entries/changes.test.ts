import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { changedEntries } from '../../../shared-engine/entries/changes.ts'
import { withEntry, withoutItem } from '../../../shared-engine/entries/edit.ts'
import { plausibleBuild } from '../../fixtures/build/random.ts'
import { fullBuild } from '../../fixtures/build/plain.ts'

describe('what two builds do not share', () => {
  it('is each changed entry, by its label, with what was and what is', () => {
    const before = fullBuild()
    const after = withEntry(withEntry(before, 'vehicle.massKg', 41), 'name', 'Other')
    expect(changedEntries(before, after)).toEqual([
      { path: 'name', label: 'Name', before: before.name, after: 'Other' },
      {
        path: 'vehicle.massKg',
        label: 'Machine: Mass, ready to run',
        before: before.vehicle.massKg,
        after: 41,
      },
    ])
  })

  it('counts what was entered or emptied, also where the default says the same', () => {
    const before = withEntry(fullBuild(), 'service.factor', 1.5)
    expect(changedEntries(before, withEntry(before, 'service.factor', undefined))).toEqual([
      { path: 'service.factor', label: 'Conditions: Factor for shock', before: 1.5, after: undefined },
    ])
  })

  it('takes a tolerance and an origin as one entry each, called by what they speak of', () => {
    const before = fullBuild()
    const tolerance = { plusMinusPercent: 5, shape: 'uniform' }
    const after = withEntry(
      withEntry(before, 'tolerances.vehicle.massKg', tolerance),
      'origins.track.pitchMm',
      before.origins?.['track.pitchMm'] === 'guessed' ? 'measured' : 'guessed',
    )
    expect(changedEntries(before, after).map(({ label }) => label)).toEqual([
      'Machine: Mass, ready to run (tolerance)',
      'Track: Drive pitch (where it comes from)',
    ])
  })

  it('tells of a reduction that is gone', () => {
    const before = fullBuild()
    const last = (before.stages ?? []).length - 1
    const changes = changedEntries(before, withoutItem(before, 'stages', last))
    expect(changes).toContainEqual(expect.objectContaining({ path: `stages.${last}.kind`, after: undefined }))
  })

  it('is nothing between a build and itself, however it was read', () => {
    fc.assert(
      fc.property(plausibleBuild, (build) => {
        expect(changedEntries(build, structuredClone(build))).toEqual([])
      }),
      { numRuns: 30 },
    )
  })
})
