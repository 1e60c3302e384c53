import { expect, it } from 'vitest'
import { trackNotes } from '../../../shared-engine/limits/track-remarks.ts'
import { check } from '../../../shared-engine/check.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { plainBuild, soilBuild } from '../../fixtures/build/plain.ts'

const notesOf = (stored: StoredBuild) => check(readBuildOf(stored)).notes

it('says that range and top speed are without the track’s own drag, where that is not known', () => {
  const plain = plainBuild()
  expect(notesOf(plain)).toContain(trackNotes['drag-unknown'])
  expect(notesOf({ ...plain, track: { ...plain.track, internalDragN: 5 } })).not.toContain(
    trackNotes['drag-unknown'],
  )
  expect(notesOf({ ...plain, track: { ...plain.track, internalDragNPerMps: 1 } })).not.toContain(
    trackNotes['drag-unknown'],
  )
})

it('says where compaction is not what holds the machine back', () => {
  const soil = soilBuild()
  const { ground } = soil
  if (ground.model !== 'soil') throw new Error('no soil')
  const on = (kphi: number) => notesOf({ ...soil, ground: { ...ground, soil: { ...ground.soil, kphi } } })
  expect(on(50_000)).toContain(trackNotes['compaction-small'])
  expect(on(100)).not.toContain(trackNotes['compaction-small'])
  expect(notesOf(plainBuild())).not.toContain(trackNotes['compaction-small'])
})
