import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { logJob } from '../../../shared-engine/jobs/log.ts'
import { logOf } from '../../../shared-engine/log/log.ts'
import { buildFrom, logFolder } from './reading.ts'

const input = {
  build: buildFrom(path.join(logFolder, '02.build.json')),
  bytes: new Uint8Array(readFileSync(path.join(logFolder, '02.csv'))),
  choice: {},
  alarms: null,
}

it('a log read as a job, in ranges of one item, gives what reading it at once gives, first its story alone', () => {
  const worker = logJob.startWorker(input)
  const collector = logJob.startCollector(input)
  const items = logJob.sizeOf(input)
  expect(items).toBeGreaterThan(3)
  let parts = 0
  for (let item = 0; item < items; item = worker.some?.(item, item + 1) ?? Infinity) {
    const { part, transfer } = worker.take()
    if (part === null) continue
    parts += 1
    expect(part).toMatchObject({ whole: false, result: logOf(input), series: [], life: [], pattern: null })
    expect(transfer).toEqual([])
    expect(logJob.isTold?.(part)).toBe(true)
  }
  expect(parts).toBe(1)
  expect(logJob.isTold?.(collector.outcome())).toBe(false)
  collector.add(worker.take().part)
  expect(collector.outcome()?.whole).toBe(true)
  expect(collector.outcome()?.result).toEqual(logOf(input))
  expect(collector.outcome()?.series.map(({ id }) => id)).toContain('rpm')
})

it('some of its items end with a pause of what is behind the text, so that a Stop is heard', () => {
  const worker = logJob.startWorker(input)
  const items = logJob.sizeOf(input)
  const ends: number[] = []
  for (let item = 0; item < items; item = ends.at(-1) ?? items) ends.push(worker.some?.(item, items) ?? items)
  // most of the items of so short a log have pauses behind them
  expect(ends.length).toBeGreaterThan(3)
  expect(worker.take().part?.whole).toBe(true)
})

it('its bytes are copied for the thread: the copy made beforehand is given away once, the log itself never', () => {
  const { sent } = logJob
  if (sent === undefined) throw new Error('it is sent as it is')
  const copy = input.bytes.slice()
  const first = sent({ ...input, copy })
  expect(first.input.bytes).toBe(copy)
  expect(first.input).not.toHaveProperty('copy')
  expect(first.transfer).toEqual([copy.buffer])
  structuredClone(null, { transfer: [...first.transfer] })
  const again = sent({ ...input, copy })
  expect(again.input.bytes).toEqual(input.bytes)
  expect(again.input.bytes.buffer).not.toBe(input.bytes.buffer)
  expect(again.transfer).toEqual([again.input.bytes.buffer])
})

it('an empty file is a job too: one refusal', () => {
  const empty = { ...input, bytes: new Uint8Array() }
  const worker = logJob.startWorker(empty)
  worker.work(0, logJob.sizeOf(empty))
  expect(worker.take().part).toMatchObject({
    result: { ok: false, mistakes: [{ code: 'log-empty' }] },
    series: [],
  })
})
