import { expect, it } from 'vitest'
import { RecentFiles } from '../../src-main/files/recent.ts'
import { MemoryDisk } from './support/memory-disk.ts'

const store = '/data/recent.json'

it('newest first, each once, at most 12, and the same after a restart', async () => {
  const disk = new MemoryDisk()
  const recent = new RecentFiles(disk, store)
  for (let number = 1; number <= 14; number++) await recent.add(`/hut/${number}.build.json`)
  await recent.add('/hut/5.build.json')
  const files = (await new RecentFiles(disk, store).list()).map(({ file }) => file)
  const expected = [5, 14, 13, 12, 11, 10, 9, 8, 7, 6, 4, 3].map((number) => `/hut/${number}.build.json`)
  expect(files).toEqual(expected)
})

it('marks what is missing', async () => {
  const disk = new MemoryDisk()
  disk.put('/hut/there.build.json', '{}')
  const recent = new RecentFiles(disk, store)
  await recent.add('/hut/gone.build.json')
  await recent.add('/hut/there.build.json')
  expect((await recent.list()).map(({ missing }) => missing)).toEqual([false, true])
})

it('finds a file by what stands for it, and nothing by anything else', async () => {
  const recent = new RecentFiles(new MemoryDisk(), store)
  await recent.add('/hut/sled.build.json')
  const [entry] = await recent.list()
  expect(await recent.fileOf(entry?.id ?? '')).toBe('/hut/sled.build.json')
  expect(await recent.fileOf('/etc/passwd')).toBeNull()
})

it('can be cleared, and begins anew where its file is damaged', async () => {
  const disk = new MemoryDisk()
  const recent = new RecentFiles(disk, store)
  await recent.add('/hut/sled.build.json')
  await recent.clear()
  expect(await new RecentFiles(disk, store).list()).toEqual([])
  disk.put(store, '{"not": "a list"}')
  expect(await new RecentFiles(disk, store).list()).toEqual([])
})
