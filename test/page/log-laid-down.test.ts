import { afterEach, describe, expect, it, vi } from 'vitest'
import { LogWork } from '../../src-renderer/questions/log/log.svelte.ts'
import { workspaceWith } from './states.ts'

/** Kept at the end of a test, so that work in this thread does not outlast it. */
const begun: LogWork[] = []
afterEach(() => {
  for (const one of begun.splice(0)) one.forget()
  vi.unstubAllGlobals()
})

const rows = Array.from({ length: 40 }, (_, at) => at)

/** What the view does: reads what was opened, to its end. */
async function read(log: LogWork): Promise<void> {
  log.work.run()
  await vi.waitFor(() => expect(log.work.running).toBeNull(), 20_000)
}

describe('what a person lays down about a log that was refused', () => {
  const kept = new Map<string, string>()
  const noTime = (more: number) =>
    ['Sample,Motor rpm,Pack volts [V]', ...rows.map((at) => `${at},${1000 + at + more},40`)].join('\n')
  const blank = (more: number) =>
    ['Seconds#Motor rpm#Pack volts [V]', ...rows.map((at) => `${at}#${1000 + at + more}#40`)].join('\n')

  /** The next file of a kind, read as far as it goes by itself. */
  async function next(text: string) {
    const log = workspaceWith([LogWork]).workspace.of(LogWork)
    begun.push(log)
    await log.open(new File([text], 'next.csv'))
    await read(log)
    if (log.log !== null && log.work.found === null) await read(log)
    return log
  }

  it.each([
    ['the column that is the time', noTime, (log: LogWork) => log.takeAsTime(0)],
    ['how many rows come a second', noTime, (log: LogWork) => log.tryAgain({ rate: 4 })],
    ['what parts the columns', blank, (log: LogWork) => log.tryAgain({ delimiter: '#' })],
  ])('is %s: kept for the next file of that shape, and forgotten when taken back', async (_, text, lay) => {
    kept.clear()
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    })
    const first = await next(text(0))
    expect(first.refused?.sentences).toHaveLength(1)
    lay(first)
    await read(first)
    expect(first.refused).toBeNull()
    const { choice } = first.log ?? {}
    const second = await next(text(7))
    expect(second.refused).toBeNull()
    expect(second.recalled).toBe(true)
    expect(second.log?.choice).toEqual(choice)
    expect(second.work.found?.result.reading.rows).toBe(40)
    second.clearColumns()
    await read(second)
    expect(second.refused?.sentences).toHaveLength(1)
    const third = await next(text(9))
    expect(third.refused?.sentences).toHaveLength(1)
    expect(third.recalled).toBe(false)
  })
})

describe('a factor of a column', () => {
  it('turns amps that a recorder counts below zero, keeps what else was laid down, and goes with a factor of one', async () => {
    const log = workspaceWith([LogWork]).workspace.of(LogWork)
    begun.push(log)
    const text = ['Time [s],Motor rpm,Amps', ...rows.map((at) => `${at},${1000 + at},${-10 - at}`)].join('\n')
    await log.open(new File([text], 'turned.csv'))
    await read(log)
    const amps = () => log.work.found?.series.find(({ id }) => id === 'amps')?.values[3]
    expect(amps()).toBe(-13)
    log.setUnit(2, 'ma')
    log.setFactor(2, -1)
    await read(log)
    expect(log.log?.choice.columns).toEqual({ Amps: { unit: 'ma', factor: -1 } })
    expect(amps()).toBeCloseTo(0.013, 9)
    log.setFactor(2, 1)
    await read(log)
    expect(log.log?.choice.columns).toEqual({ Amps: { unit: 'ma' } })
  })
})
