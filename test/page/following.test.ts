import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Following, type Watching } from '../../src-renderer/state/following.svelte.ts'

describe('work that follows what it depends on', () => {
  let key = ['a']
  const begun: { watching: Watching<string>; dropped: boolean }[] = []
  let work: Following<string>

  beforeEach(() => {
    vi.useFakeTimers()
    key = ['a']
    begun.length = 0
    work = new Following<string>(
      () => key,
      (watching) => {
        const one = { watching, dropped: false }
        begun.push(one)
        return { stop: () => watching.ended('stopped', null), drop: () => (one.dropped = true) }
      },
    )
  })
  afterEach(() => void vi.useRealTimers())

  it('begins at once the first time, and after a pause when something has changed', () => {
    work.follow()
    vi.advanceTimersByTime(1)
    expect(begun).toHaveLength(1)
    begun[0]?.watching.ended('finished', 'of a')
    expect([work.found, work.running]).toEqual(['of a', null])
    work.follow()
    vi.advanceTimersByTime(5000)
    expect(begun).toHaveLength(1)
  })

  it('is dropped with the change; a late answer of it is never taken for the new one', () => {
    const leave = work.follow()
    vi.advanceTimersByTime(1)
    leave()
    expect(begun[0]?.dropped).toBe(true)
    begun[0]?.watching.progress(1, 2, 3)
    begun[0]?.watching.ended('finished', 'of a')
    expect([work.found, work.running]).toEqual([null, null])
  })

  it('waits for a pause after each change also where nothing was found before it, but not for who comes back', () => {
    const leave = work.follow()
    vi.advanceTimersByTime(1)
    leave()
    work.follow()()
    key = ['b']
    const leaveChanged = work.follow()
    vi.advanceTimersByTime(400)
    expect(begun).toHaveLength(1)
    vi.advanceTimersByTime(200)
    expect(begun).toHaveLength(2)
    leaveChanged()
    work.follow()
    vi.advanceTimersByTime(1)
    expect(begun).toHaveLength(3)
  })

  it('shows what is told early for as long as it runs; stopped, what was found before comes back', () => {
    work.follow()
    vi.advanceTimersByTime(1)
    begun[0]?.watching.ended('finished', 'of a')
    key = ['b']
    work.run()
    begun[1]?.watching.told('of b, so far')
    expect([work.found, work.isEarly, work.isCurrent]).toEqual(['of b, so far', true, false])
    expect(work.running).not.toBeNull()
    work.stop()
    expect([work.found, work.isEarly, work.isCurrent]).toEqual(['of a', false, false])
    expect(work.brokenOff).toBe('stopped')
    begun[1]?.watching.told('late')
    expect(work.found).toBe('of a')
    work.run()
    begun[2]?.watching.told('of b, so far')
    begun[2]?.watching.ended('finished', 'of b')
    expect([work.found, work.isEarly, work.isCurrent]).toEqual(['of b', false, true])
  })

  it('does not begin by itself again once it was stopped', () => {
    work.follow()
    vi.advanceTimersByTime(1)
    work.stop()
    expect(work.running).toBeNull()
    work.follow()
    vi.advanceTimersByTime(5000)
    expect(begun).toHaveLength(1)
    work.run()
    expect(begun).toHaveLength(2)
  })
})
