import { describe, expect, it } from 'vitest'
import { Journal } from '../../src-main/files/journal.ts'
import { MemoryDisk } from './support/memory-disk.ts'

const folder = '/data/unsaved'
const work = (name: string, keptAt: string) => ({
  name,
  text: `{"${name}":1}`,
  file: null,
  fingerprint: null,
  known: [],
  keptAt,
})
const monday = '2026-01-05T10:00:00.000Z'
const tuesday = '2026-01-06T10:00:00.000Z'

describe('unsaved work', () => {
  it('of this run is not offered; after a restart it is, newest first', async () => {
    const disk = new MemoryDisk()
    const journal = new Journal(disk, folder)
    const [first, second] = [journal.begin(), journal.begin()]
    await journal.keep(first, work('sled', monday))
    await journal.keep(second, work('hauler', tuesday))
    expect(await journal.recovered()).toEqual([])

    const restarted = new Journal(disk, folder)
    const names = (await restarted.recovered()).map(({ name }) => name)
    expect(names).toEqual(['hauler', 'sled'])
  })

  it('of a crashed page is offered in the same run, and not written over by the page after it', async () => {
    const journal = new Journal(new MemoryDisk(), folder)
    const before = journal.begin()
    await journal.keep(before, work('sled', monday))
    journal.leave(before)
    const after = journal.begin()
    await journal.keep(after, work('another', tuesday))
    expect((await journal.recovered()).map(({ id, name }) => ({ id, name }))).toEqual([
      { id: before, name: 'sled' },
    ])
  })

  it('stays until it is thrown away', async () => {
    const disk = new MemoryDisk()
    const journal = new Journal(disk, folder)
    const id = journal.begin()
    await journal.keep(id, work('sled', monday))
    const restarted = new Journal(disk, folder)
    expect(await restarted.isRecovered(id)).toBe(true)
    await restarted.forget(id)
    expect(await restarted.recovered()).toEqual([])
    expect(disk.names()).toEqual([])
    await restarted.forget(id)
  })

  it('that a kill cut short leaves no half behind, and what is being written now is let be', async () => {
    const disk = new MemoryDisk()
    const journal = new Journal(disk, folder)
    const living = journal.begin()
    await journal.keep(living, work('sled', monday))
    const half = (id: string) => `.${id}.unsaved.json.0123456789ab.new`
    const dead = '00000000-0000-4000-8000-000000000000'
    disk.put(`${folder}/${half(dead)}`, '{"for')
    disk.put(`${folder}/${half(living)}`, '{"for')
    disk.put(`${folder}/.mine.new`, 'no work of ours')
    await journal.recovered()
    expect(disk.names().sort()).toEqual(
      [`${living}.unsaved.json`, half(living), '.mine.new'].map((name) => `${folder}/${name}`).sort(),
    )
  })

  it('kept twice at once ends as the later one; forgotten right after, it is gone', async () => {
    const disk = new MemoryDisk()
    const journal = new Journal(disk, folder)
    const id = journal.begin()
    await Promise.all([journal.keep(id, work('one', monday)), journal.keep(id, work('two', tuesday))])
    expect((await new Journal(disk, folder).recovered()).map(({ name }) => name)).toEqual(['two'])
    await Promise.all([journal.keep(id, work('three', tuesday)), journal.forget(id)])
    expect(disk.names()).toEqual([])
  })

  it.each([
    ['cut short', '{"format":"pitchline-unsaved","ver'],
    ['of a later version', '{"format":"pitchline-unsaved","version":2}'],
    ['no JSON', '\u0000\u0001'],
  ])('that can not be read (%s) is passed over, and left where it is', async (_why, text) => {
    const disk = new MemoryDisk()
    const damaged = `${folder}/00000000-0000-4000-8000-000000000000.unsaved.json`
    disk.put(damaged, text)
    const journal = new Journal(disk, folder)
    expect(await journal.recovered()).toEqual([])
    expect(disk.names()).toEqual([damaged])
  })

  it('that can not be kept is told', async () => {
    const disk = new MemoryDisk()
    disk.before = (_count, call) => {
      if (call === 'create') throw Object.assign(new Error('full'), { code: 'ENOSPC' })
    }
    const journal = new Journal(disk, folder)
    const kept = await journal.keep(journal.begin(), work('sled', monday))
    expect(kept.ok ? '' : kept.mistakes[0]?.code).toBe('disk-full')
  })
})
