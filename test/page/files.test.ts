import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it, onTestFinished, vi } from 'vitest'
import type { FileHandle, Host } from '../../src-renderer/host/host.ts'
import { Keeper } from '../../src-renderer/state/keeper.ts'
import { withEntry, writeBuild } from '../../shared-engine/index.ts'
import { SlowHost, buildOf, window_, settle, edit } from './slow-host.ts'

describe('saves that overlap', () => {
  it('of one build: the last text is on disk, said to be saved, and never taken for another program', async () => {
    const deeds = fc.array(fc.constantFrom('edit', 'save', 'saveAs', 'answer'), {
      minLength: 2,
      maxLength: 14,
    })
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), deeds, async (scheduler, list) => {
        const one = window_((what) => scheduler.schedule(Promise.resolve(), what))
        for (const deed of list) {
          if (deed === 'edit') edit(one)
          if (deed === 'save') void one.files.save()
          if (deed === 'saveAs') void one.files.saveAs()
          if (deed === 'answer' && scheduler.count() > 0) await scheduler.waitOne()
          await settle()
        }
        const last = one.files.save()
        await scheduler.waitFor(last)
        expect(await last).toBe(true)
        expect(one.host.refusals).toEqual([])
        expect(one.host.texts.get(one.files.onDisk?.handle ?? '')).toBe(writeBuild(one.session.stored))
        expect(one.session.isDirty).toBe(false)
      }),
      { numRuns: 40 },
    )
  })
})

describe('a save that is answered after its build was given up', () => {
  it('does not tie the new build to the old file, which the next save would overwrite', async () => {
    const waiting: (() => void)[] = []
    const one = window_(() => new Promise((letGo) => waiting.push(letGo)))
    const answerAll = async () => {
      for (await settle(); waiting.length > 0; await settle()) waiting.splice(0).forEach((letGo) => letGo())
    }
    edit(one)
    const first = one.files.saveAs()
    await answerAll()
    expect(await first).toBe(true)
    const { handle = '' } = one.files.onDisk ?? {}
    edit(one)
    const text = writeBuild(one.session.stored)
    const late = one.files.save()
    await settle()
    const leaving = one.files.newBuild()
    await settle()
    one.ask.answer('discard')
    await leaving
    await answerAll()
    expect(await late).toBe(true)
    expect(one.files.onDisk).toBeNull()
    edit(one)
    expect(one.session.isDirty).toBe(true)
    const next = one.files.save()
    await answerAll()
    expect(await next).toBe(true)
    expect(one.files.onDisk?.handle).not.toBe(handle)
    expect(one.host.texts.get(handle)).toBe(text)
  })

  it('in any order of saving, leaving and answers, no file ever holds another build than its own', async () => {
    const deeds = fc.array(fc.constantFrom('edit', 'save', 'open', 'new', 'answer'), {
      minLength: 3,
      maxLength: 16,
    })
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), deeds, async (scheduler, list) => {
        const one = window_((what) => scheduler.schedule(Promise.resolve(), what))
        // The mass stands for which build it is; a new one gets another, an opened one brings it.
        let builds = 0
        const mark = () => one.session.setEntry('mark', 'vehicle.massKg', 40 + (builds += 1))
        const owners = new Map<FileHandle, number>()
        const look = () => {
          for (const [handle, text] of one.host.texts) {
            const { vehicle } = JSON.parse(text) as { vehicle?: { massKg?: number } }
            const mass = vehicle?.massKg
            if (mass === undefined) continue
            expect(owners.get(handle) ?? mass, handle).toBe(mass)
            owners.set(handle, mass)
          }
        }
        mark()
        for (const deed of list) {
          if (deed === 'edit') edit(one)
          if (deed === 'save') void one.files.save()
          if (deed === 'new') {
            const leaving = one.files.newBuild()
            await settle()
            one.ask.answer('discard')
            await leaving
            mark()
          }
          if (deed === 'open') {
            const opening = one.files.open()
            await settle()
            one.ask.answer('discard')
            await scheduler.waitFor(opening)
          }
          if (deed === 'answer' && scheduler.count() > 0) await scheduler.waitOne()
          await settle()
          look()
        }
        await scheduler.waitIdle()
        await settle()
        look()
        const held = one.host.texts.get(one.files.onDisk?.handle ?? '')
        if (!one.session.isDirty && held !== undefined) expect(held).toBe(writeBuild(one.session.stored))
        expect(one.host.refusals).toEqual([])
      }),
      { numRuns: 40 },
    )
  })
})

it('what was typed while another file was being read is asked about, not thrown away', async () => {
  const waiting: (() => void)[] = []
  const one = window_(() => new Promise((letGo) => waiting.push(letGo)))
  const opening = one.files.open()
  await settle()
  edit(one)
  const text = writeBuild(one.session.stored)
  waiting.splice(0).forEach((letGo) => letGo())
  await settle()
  expect(one.ask.open?.title).toMatch(/^Save the changes to/)
  one.ask.answer(null)
  await opening
  expect(writeBuild(one.session.stored)).toBe(text)
  expect(one.host.released).toEqual(['file 1'])
})

it('a file of version 1 is opened with a word of what was brought up, and stays on disk as it was', async () => {
  const text = readFileSync(new URL('../golden/01.build.json', import.meta.url), 'utf8')
  const one = window_(async () => undefined)
  const bytes = new TextEncoder().encode(text)
  const file = { handle: 'old', name: 'old.build.json', bytes, fingerprint: text }
  Object.assign(one.host, { open: async () => ({ ok: true, value: file }) })
  one.host.texts.set('old', text)
  await one.files.open()
  expect(one.notices.shown).toMatchObject({ tone: 'told', next: 'The file is as it was until you save.' })
  expect(one.notices.shown?.what).toContain('old.build.json is of an earlier version')
  expect(one.notices.shown?.details.join(' ')).toContain('track.tensioner')
  expect(one.session.isDirty).toBe(false)
  expect(one.host.texts.get('old')).toBe(text)
  // Another file, of this version, has nothing to tell.
  Object.assign(one.host, { open: SlowHost.prototype.open })
  await one.files.open()
  expect(one.notices.shown).toBeNull()
})

it('recovered work is one step upon its file as it is: undo comes back to that, redo to the work', async () => {
  const one = window_(async () => undefined)
  const saved = buildOf('sled', 1)
  const work = withEntry(saved, 'vehicle.massKg', 41)
  const text = writeBuild(saved)
  const file = { handle: 'sled', name: 'sled', bytes: new TextEncoder().encode(text), fingerprint: text }
  const discarded: string[] = []
  Object.assign(one.host, {
    read: async () => ({ ok: true, value: file }),
    discardRecovered: async (id: string) => void discarded.push(id),
  })
  const kept = { id: 'w', name: 'sled', text: writeBuild(work), keptAt: '2026-11-29T12:00:00Z', file }
  await one.files.takeRecovered({ ...kept, fileChangedSince: false })
  expect(one.session.isDirty).toBe(true)
  expect(writeBuild(one.session.stored)).toBe(kept.text)
  expect(one.session.history.undoName).toBe('recover unsaved work')
  one.session.history.undo()
  expect([writeBuild(one.session.stored), one.session.isDirty]).toEqual([text, false])
  one.session.history.redo()
  expect(writeBuild(one.session.stored)).toBe(kept.text)
  expect(discarded).toEqual(['w'])
  // Where the file was changed since, there is nothing of it to come back to.
  one.session.history.undo()
  await one.files.takeRecovered({ ...kept, fileChangedSince: true })
  expect([one.session.isDirty, one.session.history.undoName]).toEqual([true, null])
})

describe('going back to the file', () => {
  it('is a step like any other: undo brings back what was changed since the save, unasked', async () => {
    const one = window_(async () => undefined)
    Object.assign(one.host, {
      read: async (handle: string) => {
        const text = one.host.texts.get(handle) ?? ''
        const bytes = new TextEncoder().encode(text)
        return { ok: true, value: { handle, name: handle, bytes, fingerprint: text } }
      },
    })
    edit(one)
    await one.files.save()
    const { history } = one.session
    const saved = one.session.stored
    edit(one)
    const changed = one.session.stored
    await one.files.revert()
    expect(one.ask.open).toBeNull()
    expect([one.session.stored, one.session.isDirty]).toEqual([saved, false])
    expect(history.undoName).toBe('go back to the saved file 1')
    history.undo()
    expect([one.session.stored, one.session.isDirty]).toEqual([changed, true])
    // And past it to the state that was saved, which is known as such.
    history.undo()
    expect(one.session.isDirty).toBe(false)
    history.redo()
    history.redo()
    expect([one.session.stored, one.session.isDirty]).toEqual([saved, false])
    // With nothing changed since there is nothing to go back from.
    await one.files.revert()
    expect(history.redoName).toBeNull()
    expect(history.depth).toBe(3)
    expect(one.host.released).toEqual([])
  })

  it('takes what another program made of it, to be undone as well, and the next save finds the file as it is', async () => {
    const one = window_(async () => undefined)
    edit(one)
    await one.files.save()
    const own = one.session.stored
    const theirs = writeBuild(buildOf('theirs', 7))
    one.host.texts.set('file 1', theirs)
    one.files.noteChangedOutside('file 1', false)
    const value = {
      handle: 'file 1',
      name: 'file 1',
      bytes: new TextEncoder().encode(theirs),
      fingerprint: theirs,
    }
    Object.assign(one.host, { read: async () => ({ ok: true, value }) })
    await one.files.revert()
    expect([writeBuild(one.session.stored), one.session.isDirty]).toEqual([theirs, false])
    expect(one.files.changedOutside).toBeNull()
    one.session.history.undo()
    expect([one.session.stored, one.session.isDirty]).toEqual([own, true])
    expect(await one.files.save()).toBe(true)
    expect(one.host.refusals).toEqual([])
    expect(one.host.texts.get('file 1')).toBe(writeBuild(own))
  })

  it('drops a save that waits: it would put what was given up onto the disk', async () => {
    const waiting: (() => void)[] = []
    let isSlow = false
    const one = window_(() =>
      isSlow ? new Promise((letGo) => waiting.push(letGo)) : Promise.resolve(undefined),
    )
    edit(one)
    await one.files.save()
    const text = one.host.texts.get('file 1') ?? ''
    const value = {
      handle: 'file 1',
      name: 'file 1',
      bytes: new TextEncoder().encode(text),
      fingerprint: text,
    }
    Object.assign(one.host, { read: async () => ({ ok: true, value }) })
    isSlow = true
    edit(one)
    const first = one.files.save()
    edit(one)
    const second = one.files.save()
    await settle()
    await one.files.revert()
    isSlow = false
    waiting.splice(0).forEach((letGo) => letGo())
    await first
    expect(await second).toBe(false)
    expect(writeBuild(one.session.stored)).toBe(text)
  })
})

it('closing that is asked for again while it is being asked about is one question', async () => {
  const one = window_(async () => undefined)
  const answers: boolean[] = []
  Object.assign(one.host, { answerClose: (close: boolean) => answers.push(close) })
  edit(one)
  const [first, again] = [one.files.close(), one.files.close()]
  await settle()
  one.ask.answer('discard')
  await Promise.all([first, again])
  expect(answers).toEqual([true])
})

describe('keeping on a slow host', () => {
  it('while a save waits for its turn is said with it: what was kept since is newer than what it saves', async () => {
    vi.useFakeTimers()
    onTestFinished(() => void vi.useRealTimers())
    let letGo = () => {}
    const held = new Promise<void>((answer) => (letGo = answer))
    const one = window_((what) => (what === 'save' ? held : Promise.resolve()))
    const first = one.files.saveAs()
    await vi.advanceTimersByTimeAsync(1)
    expect(await first).toBe(true)
    edit(one)
    const saves = [one.files.save()]
    edit(one)
    saves.push(one.files.save())
    edit(one)
    one.files.noteChange()
    await vi.advanceTimersByTimeAsync(1_000)
    expect(one.host.kept).toHaveLength(1)
    letGo()
    await Promise.all(saves)
    await one.files.save()
    expect(one.host.keepsAtSave).toEqual([0, 0, 1])
  })

  it('never queues up: while one keep is under way, only the newest waits', async () => {
    vi.useFakeTimers()
    onTestFinished(() => void vi.useRealTimers())
    const waiting: (() => void)[] = []
    const host = new SlowHost(() => new Promise((letGo) => waiting.push(letGo)))
    const keeper = new Keeper(host as unknown as Host, () => undefined)
    let typed = 0
    const work = () => ({ name: 'sled', text: `typed ${typed}`, handle: null, fingerprint: null })
    for (typed = 1; typed <= 4; typed++) {
      keeper.keep(work)
      await vi.advanceTimersByTimeAsync(1000)
    }
    expect(waiting).toHaveLength(1)
    for (let look = 0; look < 3; look++) {
      waiting.splice(0).forEach((letGo) => letGo())
      await vi.advanceTimersByTimeAsync(0)
    }
    expect(host.kept.map(({ text }) => text)).toEqual(['typed 1', 'typed 5'])
    expect(waiting).toEqual([])
  })
})
