import { readFileSync } from 'node:fs'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { columnKey, withColumn } from '../../src-renderer/questions/log/column-choice.ts'
import { logPlotOf, panelsOf } from '../../src-renderer/questions/log/log-data.ts'
import {
  limitsPassed,
  warningTold,
  worstFirst,
  worstTold,
} from '../../src-renderer/questions/log/log-words.ts'
import { linesAbout } from '../../src-renderer/questions/log/file-lines.ts'
import { evidenceTold, numbersTold, unitsFor } from '../../src-renderer/questions/log/column-words.ts'
import { ChangesWork } from '../../src-renderer/questions/log/changes.svelte.ts'
import type { QuestionStateClass } from '../../src-renderer/state/question.ts'
import { LogWork } from '../../src-renderer/questions/log/log.svelte.ts'
import { workspaceWith } from './states.ts'

/** Kept at the end of a test, so that work in this thread does not outlast it. */
const begun: LogWork[] = []
afterEach(() => {
  for (const one of begun.splice(0)) one.forget()
})

const demoText = readFileSync('examples/quick-sled-puller.log.csv', 'utf8')
const file = (name: string, text: string) => new File([text], name)

function logWork(others: readonly QuestionStateClass[] = []) {
  const { workspace } = workspaceWith([LogWork, ...others])
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
    const plot = logPlotOf(told, 1, workspace.session.checked.machine, 900)
    expect(plot.panels.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Motor rpm', 'Pack volts', 'Current', 'Ground speed']),
    )
    // No current is logged: what the sag tells has the width of one step of the volts.
    const current = plot.panels.find(({ label }) => label === 'Current')
    expect(current?.curves.some(({ band }) => band !== null)).toBe(true)
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

  it('asks of a log without a time which column it is, and reads it by that one', async () => {
    const { log } = logWork()
    const rows = Array.from({ length: 40 }, (_, at) => `${at},${1000 + 10 * at},40`)
    await log.open(file('bare.csv', ['Sample,Motor rpm,Pack volts [V]', ...rows].join('\n')))
    await read(log)
    expect(log.refused?.sentences.join(' ')).toContain('no time')
    expect(log.refused?.headings).toEqual(['Sample', 'Motor rpm', 'Pack volts [V]'])
    log.takeAsTime(7)
    expect(log.log).toBeNull()
    log.takeAsTime(0)
    await read(log)
    expect(log.refused).toBeNull()
    expect(log.work.found?.result.reading.timeForm).toBe('count')
    expect(log.work.found?.result.segments[0]?.seconds).toBe(39)
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

  it('shows the part of the run that a sentence tells of, nearer and further, and never past its ends', async () => {
    const { log, told, workspace } = await opened()
    const spin = told.result.episodes.find(({ kind }) => kind === 'spin')
    if (spin?.spunUntil === undefined) throw new Error('nothing spun')
    // A track that slipped on take-off has long held again while the rpm is still up.
    expect(spin.spunUntil).toBeLessThan(spin.start + (spin.end - spin.start) / 2)
    log.show(spin)
    const { span } = log
    if (span === null) throw new Error('nothing is shown')
    expect(span.from).toBeLessThanOrEqual(spin.start)
    expect(span.to).toBeGreaterThanOrEqual(spin.spunUntil)
    expect(workspace.cursors.logSeconds).toBe(spin.start)
    const { machine } = workspace.session.checked
    const near = logPlotOf(told, 1, machine, 900, span)
    const all = logPlotOf(told, 1, machine, 900)
    expect(all.panels).toHaveLength(panelsOf(told, 1))
    expect(near.panels.map(({ label }) => label)).toEqual(all.panels.map(({ label }) => label))
    for (const { curves } of near.panels)
      for (const { seconds } of curves) {
        expect(seconds.filter((time) => time < span.from).length).toBeLessThanOrEqual(1)
        expect(seconds.filter((time) => time > span.to).length).toBeLessThanOrEqual(1)
      }
    log.zoom(1, 0.5, span.from + 1)
    expect((log.span?.to ?? 0) - (log.span?.from ?? 0)).toBeCloseTo((span.to - span.from) / 2, 6)
    // What the pointer is on stays under it: as far from the left edge, as a share of the width, as before.
    const shareOf = (part: typeof span) => (span.from + 1 - part.from) / (part.to - part.from)
    expect(shareOf(log.span ?? span)).toBeCloseTo(shareOf(span), 9)
    log.pan(1, -1000)
    expect(log.span?.from).toBe(0)
    log.zoom(1, 1000, null)
    expect(log.span).toBeNull()
  })

  it('has forces on a tooth and in a loop, as ranges where the current comes in steps', async () => {
    const { told } = await opened()
    for (const id of ['toothN', 'tensionN'] as const) {
      const series = told.series.find((one) => one.id === id)
      if (series === undefined || series.range === null) throw new Error(`no range of ${id}`)
      const { range, values } = series
      expect(values.length, id).toBeGreaterThan(50)
      values.forEach((value, at) => {
        const [low = NaN, high = NaN] = [range.low[at], range.high[at]]
        if (Number.isNaN(value) || Number.isNaN(low) || Number.isNaN(high)) return expect(value).toBeNaN()
        expect(low).toBeLessThanOrEqual(value + 1e-9)
        expect(high).toBeGreaterThanOrEqual(value - 1e-9)
      })
    }
  })

  it('says which alarm would have spoken before the worst, or that none would', async () => {
    const { told } = await opened()
    const { episodes } = told.result
    const names = new Map([['rpm', 'Motor rpm']])
    const lost = episodes.find(({ kind }) => kind === 'load-lost')
    const alarm = {
      id: 'rpm',
      spoke: 1,
      firstAt: { segment: 1, t: (lost?.before?.to ?? 0) - 1.3 },
      falseAlarms: 0,
      missed: 0,
    }
    expect(warningTold(episodes, [alarm], names)).toMatch(
      /^Motor rpm would have spoken 1\.3.s before it \(load lost/,
    )
    expect(warningTold(episodes, [{ ...alarm, spoke: 0, firstAt: null }], names)).toMatch(/^None/)
    expect(warningTold([], [alarm], names)).toBeNull()
  })

  it('makes the run the build’s own drive, as one step to undo by its name', async () => {
    const { log, workspace } = await opened()
    const { session } = workspace
    const before = session.stored
    expect(log.driveIt()).toEqual([])
    expect(session.stored.service?.pattern?.name).toBe('Run of run.csv')
    expect(session.stored.service?.pattern?.rows.length).toBeGreaterThan(5)
    expect(session.history.undoName).toBe('drive the run of run.csv')
    session.history.undo()
    expect(session.stored).toEqual(before)
  })

  it('stays when another build is opened, to be read against it', async () => {
    const { log } = await opened()
    log.forget()
    expect(log.work.found).toBeNull()
    expect(log.log?.name).toBe('run.csv')
  })
})

describe('what a person lays down about a log', () => {
  const rows = Array.from(
    { length: 40 },
    (_, at) => `${at / 5};${1000 + 10 * at};${at === 20 ? 400 : 40};${20 + at / 10}`,
  )
  const text = ['Time [s];Motor rpm;Pack volts [V];Temp', ...rows].join('\n')

  it('is a unit, and what each meaning rests on is told', async () => {
    const { log, told } = await opened(text)
    expect(told.evidence.map(evidenceTold)).toEqual([
      // A heading that is a unit is both (docs/logs.md, 1).
      'numbers that rise as time does; unit in the heading',
      'by its heading; unit in the heading',
      'by its heading; unit in the heading',
      'by its heading; unit: the usual one',
    ])
    expect(told.evidence.map(numbersTold)[1]).toBe('1000; 1000 to 1390')
    expect(unitsFor('motorC')).toContain('°f')
    log.setUnit(3, '°f')
    await read(log)
    const found = log.work.found
    expect(found?.result.columns[3]?.unit).toBe('°f')
    expect(found?.evidence[3]?.unitFrom).toBe('choice')
    // NIST SP 811: 20 °F are −6.67 °C.
    expect(found?.series.find(({ id }) => id === 'motorC')?.values[0]).toBeCloseTo(-6.6667, 3)
    log.setUnit(3, null)
    await read(log)
    expect(log.work.found?.result.columns[3]?.unit).toBe(told.result.columns[3]?.unit)
  })

  it('is a repair taken back, and made again; its first row is shown as it stands in the file', async () => {
    const { log, told } = await opened(text)
    const repair = told.result.repairs.find(({ code }) => code === 'impossible')
    expect(repair?.firstRow).toBe(22)
    const lines = linesAbout(told.log.bytes, told.result.reading.encoding, 22, 1)
    expect(lines.map(({ number, text: line }) => [number, line])).toEqual([
      [21, rows[19]],
      [22, rows[20]],
      [23, rows[21]],
    ])
    log.leaveAsLogged('impossible', true)
    await read(log)
    expect(log.work.found?.result.repairs.map(({ code }) => code)).not.toContain('impossible')
    expect(
      Math.max(...(log.work.found?.series.find(({ id }) => id === 'volts')?.values ?? []).map(Number)),
    ).toBe(400)
    log.leaveAsLogged('impossible', false)
    await read(log)
    expect(log.work.found?.result.repairs).toEqual(told.result.repairs)
  })

  it('is how many rows come a second, for a file without a time that could not be read before', async () => {
    const { log } = logWork()
    await log.open(
      file('untimed.csv', ['Motor rpm,Pack volts [V]', ...rows.map((_, at) => `${1000 + at},40`)].join('\n')),
    )
    await read(log)
    expect(log.refused?.sentences).toHaveLength(1)
    log.tryAgain({ rate: 5 })
    await read(log)
    expect(log.refused).toBeNull()
    expect(log.work.found?.result.facts.seconds).toBeCloseTo(39 / 5, 9)
  })

  it('is kept for the next log with the same headings, and forgotten when it is taken back', async () => {
    const kept = new Map<string, string>()
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    })
    const { log } = await opened(text)
    log.setColumn(3, 'controllerC')
    await read(log)
    const next = await opened(`${text}\n9;1500;41;30`)
    // Seen plainly first, then read again as it was laid down.
    await read(next.log)
    expect(next.log.recalled).toBe(true)
    expect(next.log.work.found?.result.columns[3]?.channel).toBe('controllerC')
    next.log.clearColumns()
    await read(next.log)
    const last = await opened(text)
    expect(last.log.recalled).toBe(false)
    vi.unstubAllGlobals()
  })
})

describe('lines of a file', () => {
  it('are found whatever they end with, and in two bytes a letter', () => {
    const bytes = new TextEncoder().encode('a\r\nb\rc\nd')
    expect(linesAbout(bytes, 'utf-8', 3, 1).map(({ text }) => text)).toEqual(['b', 'c', 'd'])
    expect(linesAbout(bytes, 'utf-8', 1, 0)).toEqual([{ number: 1, text: 'a' }])
    const wide = new Uint8Array(Buffer.from('Ċ\nb\n', 'utf16le'))
    expect(linesAbout(wide, 'utf-16-le', 2, 0)).toEqual([{ number: 2, text: 'b' }])
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
    expect(limitsPassed([episode(10, 12, 85), episode(20, 25, 90)], 1, 'metric', 350)).toEqual([
      {
        label: 'Motor temperature',
        limit: expect.stringMatching(/^80/),
        reached: expect.stringMatching(/^90/),
        times: 2,
        first: '10.0\u202Fs',
        seconds: '7.0\u202Fs',
        share: '2.0\u202F%',
      },
    ])
    expect(limitsPassed([{ ...episode(1, 2, 70), over: false }], 1, 'metric', 350)).toEqual([])
  })
})

describe('the moment under the cursor', () => {
  it('is what the drawing shows: speed, current and force of that time, and nothing of a load that went', async () => {
    const { workspace, log, told } = await opened()
    expect(log.moment).toBeNull()
    const loss = worstFirst(told.result.episodes)[0]
    if (loss?.before === undefined || loss.before === null) throw new Error('the demo log loses its load')
    log.show(loss)
    workspace.view.question = 'log'
    const before = log.moment
    const series = told.series.find(({ id }) => id === 'rpm')
    const at = series?.seconds.findLastIndex((seconds) => seconds <= loss.before!.from) ?? -1
    // rad/s of the logged rpm, by definition.
    expect(before?.state.motorSpeed).toBeCloseTo(((series?.values[at] ?? NaN) * Math.PI) / 30, 6)
    expect(before?.state.motorThrust).toBeGreaterThan(0)
    expect(before?.words).toMatch(/^At \d+\.\d\d.s of the log: .*tooth/)
    workspace.moveCursor('logSeconds', loss.before.to + 0.5)
    expect(log.moment?.state.motorThrust).toBeNaN()
    workspace.view.question = 'fast'
    expect(log.moment).toBeNull()
  })
})

describe('before and after', () => {
  it('compares the open log with an earlier one, says what cannot be told, and keeps it where a file cannot be read', async () => {
    const { workspace, log } = logWork([ChangesWork])
    await log.open(file('run.csv', demoText))
    await read(log)
    const changes = workspace.of(ChangesWork)
    await changes.open(file('earlier.csv', demoText))
    expect(changes.wanted).toBe(true)
    changes.work.run()
    await vi.waitFor(() => expect(changes.work.running).toBeNull(), 20_000)
    expect(changes.work.found?.against).toBe('log')
    // The demo run is half a minute of changing speeds: too short to tell anything, which is said.
    expect(changes.work.found?.changes).toEqual([])
    expect(changes.work.found?.notCompared.map(({ id }) => id)).toContain('motor-amps')
    await changes.open({ name: 'gone.csv', size: 9, arrayBuffer: () => Promise.reject(new Error('gone')) })
    expect(changes.refused).toEqual([expect.stringContaining('gone.csv')])
    expect(changes.before?.name).toBe('earlier.csv')
    await changes.openBuild(file('notes.json', '{'))
    expect(changes.refused.length).toBeGreaterThan(0)
    expect(changes.drivenWith).toBeNull()
    changes.work.forget()
  })
})
