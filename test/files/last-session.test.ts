import { expect, it } from 'vitest'
import { LastSession } from '../../src-main/files/last-session.ts'
import { MemoryDisk } from './support/memory-disk.ts'

const store = '/data/session.json'

it('notes what is open, the same after a restart, without what is gone', async () => {
  const disk = new MemoryDisk()
  disk.put('/hut/sled.build.json', '{}')
  disk.put('/hut/hauler.build.json', '{}')
  const session = new LastSession(disk, store)
  await session.note(['/hut/sled.build.json', '/hut/gone.build.json', '/hut/hauler.build.json'])
  const again = new LastSession(disk, store)
  expect(await again.files()).toEqual(['/hut/sled.build.json', '/hut/hauler.build.json'])
  await session.note([])
  expect(await again.files()).toEqual([])
})

it('has nothing to open where nothing was noted, or where the note is damaged', async () => {
  const disk = new MemoryDisk()
  expect(await new LastSession(disk, store).files()).toEqual([])
  for (const damaged of ['', '{"not": "a list"}', '[1, 2]']) {
    disk.put(store, damaged)
    expect(await new LastSession(disk, store).files()).toEqual([])
  }
})
