import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'
import { FileService } from '../../src-main/files/file-service.ts'
import type { FileSystem } from '../../src-main/files/file-system.ts'
import { Journal } from '../../src-main/files/journal.ts'
import { OpenFiles } from '../../src-main/files/open-files.ts'
import { fingerprintOf } from '../../src-main/files/read.ts'
import { RecentFiles } from '../../src-main/files/recent.ts'
import { OutsideChanges } from '../../src-main/files/watch.ts'
import { MemoryDisk } from './support/memory-disk.ts'
import { asShown } from './support/as-shown.ts'

const file = '/hut/sled.build.json'
const shaOf = (text: string) => fingerprintOf(new TextEncoder().encode(text))

/** The disk with every call's answer put off until the scheduler lets it go, in any order. */
function slowed(disk: FileSystem, scheduler: fc.Scheduler): FileSystem {
  const slow = <T extends object>(target: T): T =>
    new Proxy(target, {
      get(_target, name) {
        const member = Reflect.get(target, name) as unknown
        if (typeof member !== 'function') return member
        return async (...words: unknown[]) => {
          await scheduler.schedule(Promise.resolve(), String(name))
          const answer: unknown = await Reflect.apply(member, target, words)
          return name === 'create' ? slow(answer as object) : answer
        }
      },
    })
  return slow(disk)
}

interface Bench {
  readonly disk: MemoryDisk
  readonly service: FileService
  readonly files: OpenFiles
  readonly outside: OutsideChanges
  readonly recent: RecentFiles
  readonly journal: Journal
  /** The window's place in it. */
  readonly id: string
  readonly told: string[]
}

function benchOn(disk: MemoryDisk, seen: FileSystem): Bench {
  const told: string[] = []
  const files = new OpenFiles()
  const outside = new OutsideChanges(seen, ({ handle }) => told.push(handle))
  const recent = new RecentFiles(seen, '/data/recent.json')
  const journal = new Journal(seen, '/data/unsaved')
  const parts = { disk: seen, files, recent, outside, show: () => undefined, used: () => undefined }
  const id = journal.begin()
  const saving = (_owner: number, fingerprint: string, keeps: number) =>
    journal.saving(id, fingerprint, keeps)
  const service = new FileService({ ...parts, saving })
  return { disk, service, files, outside, recent, journal, id, told }
}

describe('saves that overlap', () => {
  it('end as the last one asked for, whichever is answered first, and none is taken for another program', async () => {
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), fc.integer({ min: 2, max: 5 }), async (scheduler, count) => {
        const disk = new MemoryDisk()
        disk.put(file, 'as it was')
        const { service, files, outside, told } = benchOn(disk, slowed(disk, scheduler))
        const opening = service.open(1, file)
        await scheduler.waitFor(opening)
        const opened = await opening
        if (!opened.ok) throw new Error('not opened')
        const { handle, fingerprint } = opened.value
        const [one] = files.of(1)
        if (!one) throw new Error('nothing is open')
        // Nobody waits for an answer: each names what was read at first, as the page does while a save is on its way.
        const all = Array.from({ length: count }, (_none, at) => [
          service.save(1, handle, asShown(`save ${at}`), fingerprint),
          outside.look(one),
        ]).flat()
        await scheduler.waitFor(Promise.all(all))
        const answers = (await Promise.all(all)).filter((answer) => answer !== undefined)
        expect(answers.map(({ ok }) => ok)).toEqual(Array(count).fill(true))
        expect(disk.seen(file)).toBe(`save ${count - 1}`)
        expect(told).toEqual([])
        service.releaseAll(1)
      }),
      { numRuns: 60 },
    )
  })
})

describe('two windows that ask for one file at the same moment', () => {
  it('do not both get it', async () => {
    const disk = new MemoryDisk()
    disk.put(file, 'as it was')
    let letGo = (): void => undefined
    const gate = new Promise<void>((open) => (letGo = open))
    let waiting = 0
    const stat = disk.stat.bind(disk)
    disk.stat = async (name) => {
      // Both have looked who works on the file, or one was refused, before either may read it.
      if (++waiting === 2) letGo()
      await gate
      return stat(name)
    }
    const { service } = benchOn(disk, disk)
    const asked = [1, 2].map(async (owner) => {
      const answer = await service.open(owner, file)
      letGo()
      return answer
    })
    const answers = await Promise.all(asked)
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    service.releaseAll(1)
    service.releaseAll(2)
  })

  it('a file that could not be read is free for the other', async () => {
    const disk = new MemoryDisk()
    const { service } = benchOn(disk, disk)
    expect((await service.open(1, file)).ok).toBe(false)
    disk.put(file, 'there at last')
    expect((await service.open(2, file)).ok).toBe(true)
    service.releaseAll(2)
  })
})

it('a window that let go of a file while its save was on its way does not hold it afterwards', async () => {
  const disk = new MemoryDisk()
  disk.put(file, 'as it was')
  const { service, files } = benchOn(disk, disk)
  const opened = await service.open(1, file)
  if (!opened.ok) throw new Error('not opened')
  const saving = service.save(1, opened.value.handle, asShown('saved'), opened.value.fingerprint)
  service.release(1, opened.value.handle)
  expect((await saving).ok).toBe(true)
  expect(files.of(1)).toEqual([])
  expect((await service.open(2, file)).ok).toBe(true)
  service.releaseAll(2)
})

it('of files opened together, each is in the list of recent files', async () => {
  await fc.assert(
    fc.asyncProperty(fc.scheduler(), async (scheduler) => {
      const disk = new MemoryDisk()
      const { recent } = benchOn(disk, slowed(disk, scheduler))
      const added = ['/hut/a', '/hut/b', '/hut/c'].map((one) => recent.add(one))
      await scheduler.waitFor(Promise.all(added))
      const again = new RecentFiles(disk, '/data/recent.json')
      expect((await again.list()).map((one) => one.file)).toEqual(['/hut/c', '/hut/b', '/hut/a'])
    }),
    { numRuns: 30 },
  )
})

describe('unsaved work on a slow disk', () => {
  const work = (text: string) => ({
    name: 'sled',
    text,
    file,
    fingerprint: shaOf('as it was'),
    known: [],
    keptAt: '2026-01-05T10:00:00.000Z',
  })
  let disk: MemoryDisk

  beforeEach(() => {
    disk = new MemoryDisk()
  })

  const texts = async () => (await new Journal(disk, '/data/unsaved').recovered()).map(({ text }) => text)

  it('does not queue up: the newest takes the place of what waits', async () => {
    const journal = new Journal(disk, '/data/unsaved')
    const id = journal.begin()
    const kept = Array.from({ length: 20 }, (_none, at) => journal.keep(id, work(`kept ${at}`)))
    expect((await Promise.all(kept)).every(({ ok }) => ok)).toBe(true)
    expect(await texts()).toEqual(['kept 19'])
    expect(disk.calls.filter((call) => call === 'rename').length).toBeLessThanOrEqual(2)
  })

  it('kept, saved, forgotten in any order of answers ends as the orders were given', async () => {
    const orders = fc.array(fc.constantFrom('keep' as const, 'forget' as const, 'saving' as const), {
      minLength: 1,
      maxLength: 12,
    })
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), orders, async (scheduler, given) => {
        disk = new MemoryDisk()
        const journal = new Journal(slowed(disk, scheduler), '/data/unsaved')
        const id = journal.begin()
        let expected = null as { text: string; savedAs: string | null } | null
        const all: Promise<unknown>[] = []
        let keeps = 0
        for (const [at, order] of given.entries()) {
          if (order === 'keep') {
            keeps += 1
            expected = { text: `kept ${at}`, savedAs: null }
            all.push(journal.keep(id, work(`kept ${at}`)))
          } else if (order === 'forget') {
            expected = null
            all.push(journal.forget(id))
          } else {
            if (expected) expected = { ...expected, savedAs: `saved ${at}` }
            all.push(journal.saving(id, `saved ${at}`, keeps))
          }
        }
        await scheduler.waitFor(Promise.all(all))
        const found = (await new Journal(disk, '/data/unsaved').recovered()).map(({ text, savedAs }) => ({
          text,
          savedAs,
        }))
        expect(found).toEqual(expected ? [expected] : [])
      }),
      { numRuns: 60 },
    )
  })
})

describe('a save that waits while newer work is kept', () => {
  it('leaves the newer work to be recovered, and is known as ours', async () => {
    const disk = new MemoryDisk()
    disk.put(file, 'as it was')
    const { service, journal, id } = benchOn(disk, disk)
    const opened = await service.open(1, file)
    if (!opened.ok) throw new Error('cannot be opened')
    const { handle, fingerprint } = opened.value
    const keep = (text: string) =>
      journal.keep(id, {
        name: 'sled',
        text,
        file,
        fingerprint,
        known: [],
        keptAt: '2026-01-05T10:00:00.000Z',
      })
    await keep('one')
    // Asked for when the window showed this and had kept once; its turn comes behind another keep.
    const save = service.save(1, handle, { text: 'two', keeps: 1 }, fingerprint)
    const newer = keep('three')
    await Promise.all([save, newer])
    // The program is killed here.
    const [kept] = await new Journal(disk, '/data/unsaved').recovered()
    if (kept === undefined) throw new Error('nothing was kept')
    expect(await service.withFile(1, kept)).toMatchObject({ text: 'three', fileChangedSince: false })
    // A save of what was shown after that keep takes it up.
    await service.save(1, handle, { text: 'four', keeps: 2 }, 'overwrite')
    const [still] = await new Journal(disk, '/data/unsaved').recovered()
    expect(still?.savedAs).toBe(shaOf('four'))
  })
})

describe('recovered work', () => {
  const kept = {
    id: 'x',
    name: 'sled',
    text: 'kept',
    file,
    fingerprint: shaOf('as it was'),
    known: [] as string[],
    savedAs: null as string | null,
    keptAt: '2026-01-05T10:00:00.000Z',
  }

  it('is none where its file holds it, or holds what was saved after it was kept', async () => {
    const disk = new MemoryDisk()
    const { service } = benchOn(disk, disk)
    disk.put(file, 'kept')
    expect(await service.withFile(1, kept)).toBeNull()
    disk.put(file, 'saved later')
    expect(await service.withFile(1, { ...kept, savedAs: shaOf('saved later') })).toBeNull()
    expect(await service.withFile(1, { ...kept, savedAs: shaOf('another') })).toMatchObject({
      fileChangedSince: true,
    })
  })

  it('does not take our own save for a change by another program', async () => {
    const disk = new MemoryDisk()
    const { service } = benchOn(disk, disk)
    disk.put(file, 'ours')
    expect(await service.withFile(1, { ...kept, known: [shaOf('ours')] })).toMatchObject({
      fileChangedSince: false,
    })
  })

  it('that waits for its answer leaves its file free; once the file is read, it is taken', async () => {
    const disk = new MemoryDisk()
    disk.put(file, 'as it was')
    const { service } = benchOn(disk, disk)
    const offer = await service.withFile(1, kept)
    const handle = offer?.file?.handle ?? ''
    const other = await service.open(2, file)
    expect(other.ok).toBe(true)
    expect((await service.read(1, handle)).ok).toBe(false)
    service.releaseAll(2)
    expect((await service.read(1, handle)).ok).toBe(true)
    expect((await service.open(2, file)).ok).toBe(false)
    service.releaseAll(1)
  })
})
