import { readFileSync } from 'node:fs'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { columnKey, withColumn } from '../../src-renderer/questions/log/column-choice.ts'
import { logPlotOf } from '../../src-renderer/questions/log/log-data.ts'
import { limitsPassed, worstFirst, worstTold } from '../../src-renderer/questions/log/log-words.ts'
import { LogWork } from '../../src-renderer/questions/log/log.svelte.ts'
import { workspaceWith } from './states.ts'

/** Kept at the end of a test, so that work in this thread does not outlast it. */
const begun: LogWork[] = []
afterEach(() => {
  for (const one of begun.splice(0)) one.forget()
})

const demoText = readFileSync('examples/quick-sled-puller.log.csv', 'utf8')
const file = (name: string, text: string) => new File([text], name)

function logWork() {
  const { workspace } = workspaceWith([LogWork])
  const log = workspace.of(LogWork)
  begun.push(log)
  return { workspace, log }
}

/** What the view does: reads what was opened, to its end. */
async function read(log: LogWork): Promise<void> {
  log.work.run()
  await vi.waitFor(() => expect(log.work.running).toBeNull(), 20_000)
}

async function opened(text = demoText) {
  const { workspace, log } = logWork()
  await log.open(file('run.csv', text))
  await read(log)
  const told = log.work.found
  if (told === null) throw new Error(`not read: ${log.refused?.sentences.join(' ')}`)
  return { workspace, log, told }
}

describe('a log in the window', () => {
  it('is read from unchanged bytes: the story is that of the file, with channels to draw', async () => {
    const { told, workspace } = await opened()
    // The demo log was made so that its run passes the limit of rpm and then loses its load (scripts/demo-log.ts).
    expect(told.result.episodes.map(({ kind }) => kind)).toContain('load-lost')
    expect(worstFirst(told.result.episodes)[0]?.kind).toBe('load-lost')
    const worst = worstFirst(told.result.episodes)[0]
    if (worst === undefined) throw new Error('nothing happened')
    expect(worstTold(worst, 1, 'metric').large).toMatch(/^\d+\.\d\d\u202Fs$/)
    const plot = logPlotOf(told, 1, workspace.session.checked.machine)
    expect(plot.panels.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Motor rpm', 'Pack volts', 'Current', 'Ground speed']),
    )
    // No current is logged: what the sag tells has the width of one step of the volts.
    const current = plot.panels.find(({ label }) => label === 'Current')
    expect(current?.curves.some(({ within }) => within > 0)).toBe(true)
    expect(plot.episodes).toHaveLength(told.result.episodes.length)
  })

  it('refuses a bad file in a sentence, and what was open stays open and told', async () => {
    const { log, told } = await opened()
    await log.open(file('notes.txt', 'tightened the chain\nwent home\n'))
    await read(log)
    expect(log.refused?.name).toBe('notes.txt')
    expect(log.refused?.sentences).toHaveLength(1)
    expect(log.work.found).toBe(told)
    expect(log.work.isCurrent).toBe(true)
    expect(log.log?.name).toBe('run.csv')
  })

  it('says of a file that cannot be had that it cannot be read, and of one that is too big how big it may be', async () => {
    const { log } = logWork()
    const gone = { name: 'gone.csv', size: 9, arrayBuffer: () => Promise.reject(new Error('gone')) }
    await log.open(gone)
    expect(log.refused?.sentences).toEqual([expect.stringContaining('gone.csv')])
    await log.open({ ...gone, name: 'big.csv', size: 3 * 2 ** 30 })
    expect(log.refused?.sentences).toEqual([expect.stringContaining('less than 2 GiB')])
    expect(log.log).toBeNull()
  })

  it('reads a column as a person says, and takes it back', async () => {
    const { log, told } = await opened()
    const place = told.result.columns.findIndex(({ channel }) => channel === 'volts')
    log.setColumn(place, null)
    await read(log)
    expect(log.work.found?.result.columns[place]?.channel).toBeNull()
    expect(log.work.found?.series.some(({ id }) => id === 'volts')).toBe(false)
    log.clearColumns()
    await read(log)
    expect(log.work.found?.result.columns).toEqual(told.result.columns)
  })

  it('stays when another build is opened, to be read against it', async () => {
    const { log } = await opened()
    log.forget()
    expect(log.work.found).toBeNull()
    expect(log.log?.name).toBe('run.csv')
  })
})

describe('the choice of a column', () => {
  const columns = ['Time', 'Temp', 'Temp', ''].map((name) => ({ name, channel: null, unit: null }))

  it('names it by its heading, or by its number where that is not its own', () => {
    expect([0, 1, 2, 3].map((place) => columnKey(columns, place))).toEqual(['Time', '2', '3', '4'])
  })

  it('takes a meaning from the column that had it', () => {
    const first = withColumn({}, columns, 1, 'motorC')
    expect(withColumn(first, columns, 2, 'motorC').columns).toEqual({ 3: { channel: 'motorC' } })
    expect(withColumn(first, columns, 2, null).columns).toEqual({
      2: { channel: 'motorC' },
      3: { channel: null },
    })
  })
})

describe('limits that were passed', () => {
  const hot = { kind: 'over-temperature', segment: 1, row: 5, startAfter: null, endBefore: null } as const
  const episode = (start: number, end: number, value: number) => ({
    ...hot,
    start,
    end,
    peak: { value, t: end, unit: 'degC' as const },
    limit: 80,
    over: true,
    channel: 'motorC',
    sentence: '',
  })

  it('are told once each: how often, when first, how far, for how long in all', () => {
    expect(limitsPassed([episode(10, 12, 85), episode(20, 25, 90)], 1, 'metric')).toEqual([
      {
        label: 'Motor temperature',
        limit: expect.stringMatching(/^80/),
        reached: expect.stringMatching(/^90/),
        times: 2,
        first: '10.0\u202Fs',
        seconds: '7.0\u202Fs',
      },
    ])
    expect(limitsPassed([{ ...episode(1, 2, 70), over: false }], 1, 'metric')).toEqual([])
  })
})
