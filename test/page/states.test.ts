import { afterEach, describe, expect, it, vi } from 'vitest'
import { completeBuild, check, limitOf, withEntry, writeBuild } from '../../shared-engine/index.ts'
import { worstRow } from '../../shared-engine/limits/worst.ts'
import { SearchWork } from '../../src-renderer/questions/gears/search.svelte.ts'
import { RemedyWork } from '../../src-renderer/questions/hold/remedy.svelte.ts'
import { UncertaintyWork } from '../../src-renderer/questions/hold/uncertainty.svelte.ts'
import { DriveWork } from '../../src-renderer/questions/hot/drive.svelte.ts'
import { Side } from '../../src-renderer/questions/side/side.svelte.ts'
import { questions } from '../../src-renderer/questions/table.ts'
import { setThrottleCap } from '../../src-renderer/strip/strip-edits.ts'
import { demoBuild, workspaceWith } from './states.ts'

/** Kept at the end of a test, so that work in this thread does not outlast it. */
const begun: { forget(): void }[] = []
afterEach(() => {
  for (const one of begun.splice(0)) one.forget()
})

describe('the questions of the window', () => {
  it('have ids of their own, and every limit names one of them or none', () => {
    const ids = questions.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    const { limits } = check(completeBuild(demoBuild('quick-sled-puller')))
    const named = limits.flatMap(({ id }) => limitOf(id)?.question ?? [])
    expect(named.length).toBeGreaterThan(10)
    expect(named.filter((one) => !ids.includes(one))).toEqual([])
  })

  it('have states that can all be made, whatever comes first', () => {
    // A state that asks for another one while it is made ends the page at its start.
    const all = questions.flatMap(({ states }) => states)
    for (const states of [all, [...all].reverse()]) {
      const { workspace } = workspaceWith(states)
      for (const which of states) expect(workspace.of(which)).toBeInstanceOf(which)
    }
  })

  it('have their states made once a window; one that none lists is a bug that says so', () => {
    const { workspace } = workspaceWith([Side])
    expect(workspace.of(Side)).toBe(workspace.of(Side))
    expect(() => workspace.of(SearchWork)).toThrow(/SearchWork/)
  })
})

describe('builds side by side', () => {
  const bytes = (text: string) => new TextEncoder().encode(text)
  const file = (text: string) => () =>
    Promise.resolve({
      ok: true as const,
      value: { handle: 'h', name: 'kept.build.json', bytes: bytes(text), fingerprint: '' },
    })

  it('are three beside the open one at most, and taken back by an undo of their own', () => {
    const { workspace } = workspaceWith([Side])
    const side = workspace.of(Side)
    for (let time = 0; time < 5; time += 1) side.keepSnapshot()
    expect(side.kept).toHaveLength(3)
    expect(side.isFull).toBe(true)
    side.undo()
    expect(side.kept).toHaveLength(2)
    expect(workspace.session.history.undoName).toBeNull()
  })

  it('keep the build as it was when the open one changes, and give it back as one undoable step', () => {
    const { workspace } = workspaceWith([Side])
    const [side, { session }] = [workspace.of(Side), workspace]
    side.keepSnapshot()
    const before = session.stored
    session.setEntry('less mass', 'vehicle.massKg', 3)
    const [kept] = side.kept
    if (kept === undefined) throw new Error('nothing was kept')
    side.take(kept)
    expect(session.stored).toEqual(before)
    session.history.undo()
    expect(session.entry('vehicle.massKg')).toBe(3)
  })

  it('come from a file that is let go of at once, and stay when another build is opened', async () => {
    const { workspace, released } = workspaceWith([Side], file(writeBuild(demoBuild('hut-hauler'))))
    const side = workspace.of(Side)
    await side.addFile()
    expect(released).toEqual(['h'])
    side.forget()
    expect(side.kept.map(({ stored }) => stored)).toEqual([demoBuild('hut-hauler')])
  })

  it('refuse what is no build, say so and keep what was there', async () => {
    const { workspace } = workspaceWith([Side], file('{ "format": 1 }'))
    await workspace.of(Side).addFile()
    expect(workspace.of(Side).kept).toEqual([])
    expect(workspace.notices.shown?.what).toContain('kept.build.json')
    expect(workspace.notices.shown?.details.length).toBeGreaterThan(0)
  })
})

describe('a search', () => {
  const small = () => {
    const { workspace } = workspaceWith([SearchWork])
    const search = workspace.of(SearchWork)
    begun.push(search)
    const rows = search.form.rows.map((row) => ({
      ...row,
      on: row.path === 'stages.0.driverTeeth',
      text: '12, 13',
    }))
    search.change({ rows, bounds: [], inHand: null })
    return { workspace, search }
  }

  it('says what of the form cannot be read, at its place, and is not begun on it', () => {
    const { search } = small()
    search.change({ rows: search.form.rows.map((row) => (row.on ? { ...row, text: 'a dozen' } : row)) })
    expect(Object.keys(search.asked.troubles)).toContain('vary.stages.0.driverTeeth')
    search.begin()
    expect([search.running, search.found]).toEqual([null, null])
  })

  it('finds, is taken as one undoable step, and still answers for the build that differs in that alone', async () => {
    const { workspace, search } = small()
    search.begin()
    await vi.waitFor(() => expect(search.found?.end).toBe('finished'), 20_000)
    expect(search.found?.outcome.looked).toBe(2)
    const row = search.found?.outcome.rows[0]
    if (row === undefined) throw new Error('nothing was found')
    const before = workspace.session.stored
    expect(search.take(row.choices)).toEqual([])
    expect(search.isCurrent).toBe(true)
    workspace.session.history.undo()
    expect(workspace.session.stored).toEqual(before)
    workspace.session.setEntry('more mass', 'vehicle.massKg', 9)
    expect(search.isCurrent).toBe(false)
    const heavy = workspace.session.stored
    search.take(row.choices)
    expect(workspace.session.stored).toBe(heavy)
  })

  it('starts from a form of its own for another machine', () => {
    const { workspace, search } = small()
    workspace.session.open(demoBuild('hut-hauler'), true)
    expect(search.form.bounds).toHaveLength(1)
    expect(search.form.rows.find(({ on }) => on)?.text).not.toBe('12, 13')
  })
})

describe('what would hold', () => {
  it('is asked of the worst limit, of the one chosen in the ledger, of the one named, and no other', () => {
    const { workspace } = workspaceWith([RemedyWork])
    const remedy = workspace.of(RemedyWork)
    const [, second, third] = workspace.session.checked.limits.map(({ id }) => id)
    expect(remedy.limit).toBe(worstRow(workspace.session.checked.limits)?.id)
    workspace.view.limit = second ?? null
    expect(remedy.limit).toBe(second)
    remedy.asked = third ?? null
    expect(remedy.limit).toBe(third)
    remedy.asked = 'stage.9.bending' // of no reduction of this build
    expect(remedy.limit).toBe(second)
    remedy.forget()
    expect(remedy.asked).toBeNull()
  })
})

describe('how sure the margins are', () => {
  it('is drawn for the build in force: after a change, and while another is tried on, the ledger gets no bands', async () => {
    const { workspace } = workspaceWith([UncertaintyWork])
    const [uncertainty, { session }] = [workspace.of(UncertaintyWork), workspace]
    begun.push(uncertainty)
    uncertainty.draws = 100
    expect(uncertainty.hasSpreads).toBe(true)
    uncertainty.work.run()
    await vi.waitFor(() => expect(uncertainty.work.found?.done).toBe(100), 20_000)
    const drawn = Object.keys(uncertainty.bands)
    expect(drawn).toContain('motor.free-rpm')
    session.show({ stored: withEntry(session.stored, 'vehicle.massKg', 5), words: '5 kg' })
    expect(uncertainty.bands).toEqual({})
    expect(Object.keys(uncertainty.awaited ?? {})).toEqual(drawn)
    session.show(null)
    expect(Object.keys(uncertainty.bands)).toEqual(drawn)
    session.setEntry('less mass', 'vehicle.massKg', 5)
    expect(uncertainty.bands).toEqual({})
    expect(uncertainty.work.found).not.toBeNull()
  })

  it('takes no part where no entry has a tolerance or an origin', () => {
    const { workspace } = workspaceWith([UncertaintyWork])
    const { tolerances: _tolerances, origins: _origins, ...bare } = workspace.session.stored
    workspace.session.open(bare, true)
    expect(workspace.of(UncertaintyWork).hasSpreads).toBe(false)
  })
})

describe('a drive', () => {
  it('keeps a row as it was where the new number is not allowed, and says what is', () => {
    const drive = workspaceWith([DriveWork]).workspace.of(DriveWork)
    const [row] = drive.rows
    if (row === undefined) throw new Error('the pattern has no row')
    expect(drive.setRow(row.id, { seconds: -1 }, null)).toMatch(/^Allowed: /)
    expect(drive.rows[0]).toEqual(row)
    expect(drive.undoName).toBeNull()
  })

  it('gains and loses rows, each by one step of its undo, and never its last one', () => {
    const { workspace } = workspaceWith([DriveWork])
    const drive = workspace.of(DriveWork)
    const before = drive.rows
    const [first] = before
    drive.addAfter(first?.id ?? 0)
    expect(drive.rows).toHaveLength(before.length + 1)
    expect(new Set(drive.rows.map(({ id }) => id)).size).toBe(before.length + 1)
    drive.undo()
    expect(drive.rows).toEqual(before)
    for (const { id } of before) drive.remove(id)
    expect(drive.rows).toHaveLength(1)
    expect(workspace.session.history.undoName).toBeNull()
  })

  it('stays as edited when another build is opened', () => {
    const drive = workspaceWith([DriveWork]).workspace.of(DriveWork)
    drive.addAfter(drive.rows[0]?.id ?? 0)
    const edited = drive.rows
    drive.forget()
    expect(drive.rows).toBe(edited)
    expect(drive.work.found).toBeNull()
  })
})

describe('a throttle that is looked at', () => {
  it('is what every number is worked out for, and leaves the build, its undo and work for the build alone', () => {
    const { workspace } = workspaceWith([RemedyWork, UncertaintyWork])
    const { session, operating } = workspace
    const [stored, atFull] = [session.stored, session.checked]
    operating.throttleAsked = 0.5
    expect(session.lookedAt).toBe(50)
    const capped = withEntry(stored, 'controller.throttleCapPercent', 50)
    expect(session.checked.figures).toEqual(check(completeBuild(capped)).figures)
    expect(session.checked.limits).toEqual(check(completeBuild(capped)).limits)
    expect(session.atCap.figures).toEqual(atFull.figures)
    expect(session.stored).toBe(stored)
    expect(session.isDirty).toBe(false)
    expect(workspace.now.groundSpeed).toBe(session.checked.figures.topSpeedMps)
    expect(workspace.of(RemedyWork).limit).toBe(worstRow(atFull.limits)?.id)
    expect(workspace.of(UncertaintyWork).bands).toEqual({})
  })

  it('is never above the build’s cap nor below what a cap may be', () => {
    const { workspace } = workspaceWith([])
    const { session, operating } = workspace
    session.setEntry('less throttle', 'controller.throttleCapPercent', 60)
    operating.throttleAsked = 0.8
    expect(session.lookedAt).toBeNull()
    expect(workspace.throttle).toBe(0.6)
    operating.throttleAsked = 0
    expect(session.lookedAt).toBe(1)
  })

  it('becomes the cap as one undoable step, rounded down so that what it keeps is kept', () => {
    const { workspace } = workspaceWith([])
    const { session, operating } = workspace
    operating.throttleAsked = 0.5779
    setThrottleCap(workspace, session.lookedAt ?? 0)
    expect(session.entry('controller.throttleCapPercent')).toBe(57.7)
    expect(session.lookedAt).toBeNull()
    session.history.undo()
    expect(session.isDirty).toBe(false)
  })
})
